package publish

import (
	"fmt"
	"io/fs"
	"path"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// A Bundle is the theme's scripts and styles, each one small file. Script runs
// before the reader touches anything, Interactive answers a touch and has a
// style of its own, StudyRecord is for the study and record pages, which sheets
// do without; Pages is the style of the cover and the record, Desk what wide
// screens add, Print that of paper.
type Bundle struct {
	Script, Interactive, StudyRecord            []byte
	Style, InteractiveStyle, Pages, Desk, Print []byte
}

// Bundled compiles the theme's TypeScript and CSS. The scripts are classic
// ones, since pages opened from a folder may load no module.
func Bundled(theme fs.FS) (Bundle, error) {
	var b Bundle
	for _, part := range []struct {
		entry  string
		format api.Format
		into   *[]byte
	}{
		{"scripts/main.ts", api.FormatIIFE, &b.Script},
		{"scripts/interactive.ts", api.FormatIIFE, &b.Interactive},
		{"scripts/studyRecord.ts", api.FormatIIFE, &b.StudyRecord},
		{"styles/sheet.css", api.FormatDefault, &b.Style},
		{"styles/interactive.css", api.FormatDefault, &b.InteractiveStyle},
		{"styles/pages.css", api.FormatDefault, &b.Pages},
		{"styles/desk.css", api.FormatDefault, &b.Desk},
		{"styles/print.css", api.FormatDefault, &b.Print},
	} {
		out, err := bundleOne(theme, part.entry, part.format)
		if err != nil {
			return Bundle{}, err
		}
		*part.into = out
	}
	return b, nil
}

func bundleOne(theme fs.FS, entry string, format api.Format) ([]byte, error) {
	result := api.Build(api.BuildOptions{
		EntryPoints: []string{entry}, Bundle: true, Write: false, Outdir: "/",
		MinifyWhitespace: true, MinifyIdentifiers: true, MinifySyntax: true,
		Format: format, Target: api.ES2022, Charset: api.CharsetUTF8, LegalComments: api.LegalCommentsNone,
		LogLevel: api.LogLevelSilent, Plugins: []api.Plugin{fromFS(theme)},
	})
	if len(result.Errors) > 0 {
		e := result.Errors[0]
		if e.Location != nil {
			return nil, fmt.Errorf("theme/%s:%d:%d: %s", e.Location.File, e.Location.Line, e.Location.Column+1, e.Text)
		}
		return nil, fmt.Errorf("theme/%s: %s", entry, e.Text)
	}
	return result.OutputFiles[0].Contents, nil
}

// fromFS makes the bundler read the theme from where it is carried.
func fromFS(theme fs.FS) api.Plugin {
	return api.Plugin{Name: "theme", Setup: func(build api.PluginBuild) {
		build.OnResolve(api.OnResolveOptions{Filter: ".*"}, func(args api.OnResolveArgs) (api.OnResolveResult, error) {
			if path.Ext(args.Path) == ".woff2" { // published beside the bundle, not in it
				return api.OnResolveResult{Path: args.Path, External: true}, nil
			}
			name := args.Path
			if args.Importer != "" {
				name = path.Join(path.Dir(args.Importer), args.Path)
			}
			if path.Ext(name) == "" {
				name += ".ts"
			}
			return api.OnResolveResult{Path: name, Namespace: "theme"}, nil
		})
		build.OnLoad(api.OnLoadOptions{Filter: ".*", Namespace: "theme"}, func(args api.OnLoadArgs) (api.OnLoadResult, error) {
			content, err := fs.ReadFile(theme, args.Path)
			if err != nil {
				return api.OnLoadResult{}, err
			}
			loader := api.LoaderTS
			if strings.HasSuffix(args.Path, ".css") {
				loader = api.LoaderCSS
			}
			text := string(content)
			return api.OnLoadResult{Contents: &text, Loader: loader}, nil
		})
	}}
}
