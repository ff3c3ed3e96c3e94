package sheet

import (
	"errors"
	"io/fs"
	"path"
	"slices"
	"strings"

	"baybook/site/photo"
)

// photoKinds are the endings of photographs and what stands in the file.
var photoKinds = map[string]string{".jpg": "jpeg", ".jpeg": "jpeg", ".png": "png"}

// IsPhoto reports whether a file's name is that of a photograph.
func IsPhoto(name string) bool { return photoKinds[path.Ext(name)] != "" }

// photos looks at every photograph whole, since the builder will: what cannot
// be published is told here.
func (l *loader) photos() {
	var names []string
	for name := range l.book.Files {
		if IsPhoto(name) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	room := photo.NewRoom()
	forEach(names, func(name string) {
		now := l.book.entries[name]
		if before := l.photoBefore(name); before != nil {
			now.found = before.found
			return
		}
		if err := lookAt(l.book.FS, name, now.size, room); err != nil {
			e := refused(name, err.Error(), "save the picture again as JPEG or PNG, smaller, under the ending of its kind")
			e.found[0].Rule = "photo"
			now.found = e.found
		}
	})
	for _, name := range names {
		l.list = append(l.list, l.book.entries[name].found...)
	}
}

// photoBefore is the entry of a photograph that has not changed since the last
// reading; nil where there is none.
func (l *loader) photoBefore(name string) *entry {
	if l.previous == nil {
		return nil
	}
	now, before := l.book.entries[name], l.previous.entries[name]
	if before == nil || before.size != now.size || !before.changed.Equal(now.changed) ||
		now.changed.IsZero() || !now.changed.Before(l.previous.begun.Add(-coarse)) {
		return nil
	}
	return before
}

// lookAt decodes a photograph, as the builder will.
func lookAt(fsys fs.FS, name string, size int64, room *photo.Room) error {
	if size > photo.MostBytes {
		return photo.TooLarge(size)
	}
	data, err := fs.ReadFile(fsys, name)
	if err != nil {
		return errors.New("the file cannot be read: " + reason(err))
	}
	p, err := photo.Read(data)
	if err != nil {
		return err
	}
	if p.Kind != photoKinds[path.Ext(name)] {
		return errors.New("the name ends in " + path.Ext(name) + ", and the file holds a picture of the kind " + strings.ToUpper(p.Kind))
	}
	defer room.Enter(p)()
	_, err = p.Decode()
	return err
}
