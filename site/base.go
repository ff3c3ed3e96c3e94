package site

import (
	"context"
	"errors"
	"io/fs"

	"baybook/site/publish"
	"baybook/site/render"
)

// A base is what every edition stands on: style, script, core and icons.
type base struct {
	theme   fs.FS
	assets  render.Assets
	version Version
	files   []namedFile
}

type namedFile struct {
	name string
	file *File
}

// newBase bundles the theme and gets the core.
func newBase(ctx context.Context, o Options) (*base, error) {
	core, err := o.core(ctx)
	if err != nil {
		return nil, err
	}
	bundle, err := publish.Bundled(o.theme())
	if err != nil {
		return nil, err
	}
	version := ReadVersion()
	version.Core = shortHash(core.Module)
	b := &base{theme: o.theme(), version: version, assets: render.Assets{
		Style:            publish.Hashed("assets/sheet.css", bundle.Style),
		InteractiveStyle: publish.Hashed("assets/touched.css", bundle.InteractiveStyle),
		Pages:            publish.Hashed("assets/pages.css", bundle.Pages),
		Desk:             publish.Hashed("assets/desk.css", bundle.Desk),
		Print:            publish.Hashed("assets/print.css", bundle.Print),
		Script:           publish.Hashed("assets/page.js", bundle.Script),
		Interactive:      publish.Hashed("assets/interactive.js", bundle.Interactive),
		StudyRecord:      publish.Hashed("assets/study-record.js", bundle.StudyRecord),
		Core:             publish.Hashed("assets/core.wasm", core.Module), CoreScript: publish.Hashed("assets/core.js", core.Script),
		// The index keeps its name from edition to edition, so that a changed
		// sheet does not change every page.
		Index: "assets/find.bin", IndexScript: "assets/find.js",
	}}
	b.add(b.assets.Style, bundle.Style)
	b.add(b.assets.InteractiveStyle, bundle.InteractiveStyle)
	b.add(b.assets.Pages, bundle.Pages)
	b.add(b.assets.Desk, bundle.Desk)
	b.add(b.assets.Print, bundle.Print)
	b.add(b.assets.Script, bundle.Script)
	b.add(b.assets.Interactive, bundle.Interactive)
	b.add(b.assets.StudyRecord, bundle.StudyRecord)
	b.add(b.assets.Core, core.Module)
	b.add(b.assets.CoreScript, core.Script)
	notices, err := fs.ReadFile(o.theme(), "notices.txt")
	if err != nil {
		return nil, err
	}
	b.add("assets/notices.txt", notices)
	return b, errors.Join(b.folder(o.theme(), "icons"), b.icons(), b.folder(o.theme(), "fonts"), b.folder(o.theme(), "schemas"))
}

// icons draws the pictures that the manifest promises to systems that take no
// SVG.
func (b *base) icons() error {
	drawing, err := fs.ReadFile(b.theme, publish.IconSource)
	if err != nil {
		return err
	}
	for _, size := range publish.IconSizes {
		picture, err := publish.Icon(drawing, size)
		if err != nil {
			return err
		}
		b.add(publish.IconName(size), picture)
	}
	return nil
}

func (b *base) add(name string, data []byte) {
	b.files = append(b.files, namedFile{name, FileOf(data)})
}

// folder copies a folder of the theme.
func (b *base) folder(theme fs.FS, folder string) error {
	return fs.WalkDir(theme, folder, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(theme, name)
		if err != nil {
			return err
		}
		b.add(name, data)
		return nil
	})
}
