package site

import (
	"crypto/sha256"
	"encoding/hex"
	"sync"

	"baybook/site/publish"
)

// A File is one file of a site, made when it is first asked for. Goroutines
// may share it.
type File struct {
	// make produces the content for an edition, finish makes it ready to send;
	// finish may be nil.
	make   func(*Edition) ([]byte, error)
	finish func([]byte) ([]byte, error)

	mu     sync.Mutex
	made   bool
	data   []byte
	err    error
	sum    string
	packed map[string][]byte
}

func newFile(make func(*Edition) ([]byte, error), finish func([]byte) ([]byte, error)) *File {
	return &File{make: make, finish: finish}
}

// FileOf is a file whose content is there already.
func FileOf(data []byte) *File {
	return &File{made: true, data: data, sum: sumOf(data)}
}

// produce makes the content.
func (f *File) produce(e *Edition) ([]byte, error) {
	data, err := f.make(e)
	if err == nil && f.finish != nil {
		data, err = f.finish(data)
	}
	return data, err
}

// ready makes the content where that has not been done, and keeps it.
func (f *File) ready(e *Edition) error {
	f.mu.Lock()
	defer f.mu.Unlock()
	if !f.made {
		f.data, f.err = f.produce(e)
		f.made = true
		f.sum = sumOf(f.data)
	}
	return f.err
}

// produceUncached gives the content: the kept one, or one made now and not kept.
func (f *File) produceUncached(e *Edition) ([]byte, error) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.made {
		return f.data, f.err
	}
	data, err := f.produce(e)
	if err == nil {
		f.sum = sumOf(data)
	}
	return data, err
}

// hash gives the content's hash, made now where it is not known.
func (f *File) hash(e *Edition) (string, error) {
	f.mu.Lock()
	known := f.sum
	f.mu.Unlock()
	if known != "" {
		return known, nil
	}
	err := f.ready(e)
	return f.sum, err
}

// Data is the content; share it, do not change it.
func (f *File) Data() []byte { return f.data }

// Sum is the SHA-256 hash of the content, in hexadecimal.
func (f *File) Sum() string { return f.sum }

// Packed is the content in a coding of HTTP ("br", "gzip"), nil where it is no
// smaller so. It is packed once and kept.
func (f *File) Packed(coding string) []byte {
	f.mu.Lock()
	defer f.mu.Unlock()
	packed, done := f.packed[coding]
	if !done {
		packed = publish.Packed(f.data, coding)
		if f.packed == nil {
			f.packed = make(map[string][]byte)
		}
		f.packed[coding] = packed
	}
	return packed
}

func sumOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}
