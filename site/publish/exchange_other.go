//go:build !linux

package publish

import "errors"

// exchange swaps two names in one step, which this system cannot.
func exchange(a, b string) error { return errors.ErrUnsupported }
