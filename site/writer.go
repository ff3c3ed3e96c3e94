package site

import (
	"context"
	"fmt"
	"runtime"
	"sync/atomic"

	"golang.org/x/sync/errgroup"
)

// A writer writes an edition into a sink.
type writer struct {
	edition *Edition
	sink    Sink
	bytes   atomic.Int64
}

// all writes every file, many at a time, and then the one that names the
// hashes of the others.
func (w *writer) all(ctx context.Context) error {
	names := w.edition.names
	if err := w.some(ctx, names[:len(names)-1]); err != nil {
		return err
	}
	return w.some(ctx, names[len(names)-1:])
}

func (w *writer) some(ctx context.Context, names []string) error {
	return each(names, func(name string) error {
		if err := ctx.Err(); err != nil {
			return err
		}
		data, err := w.edition.files[name].produceUncached(w.edition)
		if err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		w.bytes.Add(int64(len(data)))
		return w.sink.Put(name, data)
	})
}

// each calls do for every item, on all processors, and returns the first error
// in the items' order.
func each[T any](items []T, do func(T) error) error {
	errs := make([]error, len(items))
	var group errgroup.Group
	group.SetLimit(runtime.GOMAXPROCS(0))
	for i, item := range items {
		group.Go(func() error {
			errs[i] = do(item)
			return nil
		})
	}
	_ = group.Wait() // the errors are in errs
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
