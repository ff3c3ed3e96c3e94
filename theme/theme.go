// Package theme holds what the site looks like and does in the browser:
// templates, styles, scripts and icons, carried inside the program.
package theme

import "embed"

// Files are the theme's folders: templates, styles, scripts, worker, icons, signs, fonts, schemas, words; and the licenses of what it carries.
//
//go:embed templates styles scripts worker icons signs fonts schemas words notices.txt
var Files embed.FS
