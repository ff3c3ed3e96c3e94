package calctest

import (
	"os"
	"testing"
)

// Missing skips a test whose tool is not installed. Where every check must run
// (BAYBOOK_CI=1, which .ci/run sets) it fails the test instead.
func Missing(t testing.TB, format string, args ...any) {
	t.Helper()
	if os.Getenv("BAYBOOK_CI") == "1" {
		t.Fatalf(format, args...)
	}
	t.Skipf(format, args...)
}
