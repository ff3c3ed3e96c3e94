package notes

import (
	"bytes"
	"image"
	_ "image/gif" // kinds of picture that notes show and a sheet may not
	"image/png"
	"io/fs"
	"net/url"
	"path"
	"regexp"
	"strings"

	"baybook/site/photo"

	_ "golang.org/x/image/webp"
)

var (
	markdownPicture = regexp.MustCompile(`!\[([^\]]*)\]\(\s*<?([^)>]+?)>?(?:\s+["'][^)]*["'])?\s*\)`)
	wikiPicture     = regexp.MustCompile(`!\[\[([^\]|]+)(?:\|([^\]]*))?\]\]`)
	htmlPicture     = regexp.MustCompile(`(?i)<img\b[^>]*>`)
	htmlSource      = regexp.MustCompile(`(?i)\bsrc\s*=\s*["']?([^"'>]+)["']?`)
	htmlAlt         = regexp.MustCompile(`(?i)\balt\s*=\s*["']([^"']*)["']`)
	wikiLink        = regexp.MustCompile(`\[\[([^\]|]+)(?:\|([^\]]*))?\]\]`)
	markdownLink    = regexp.MustCompile(`\[([^\]]+)\]\(\s*<?([^)>]+?)>?\s*\)`)
	tableRule       = regexp.MustCompile(`^\s*\|?\s*:?-{2,}:?\s*(\|\s*:?-{2,}:?\s*)+\|?\s*$`)
)

// linked brings the pictures along and turns links between notes to the drafts.
func (d *draft) linked(lines []string) []string {
	out := make([]string, len(lines))
	fenced := false
	for i, line := range lines {
		if fenceLine.MatchString(line) {
			fenced = !fenced
		}
		if tableRule.MatchString(line) {
			d.tables++
		}
		if !fenced {
			line = markdownPicture.ReplaceAllStringFunc(line, func(s string) string {
				m := markdownPicture.FindStringSubmatch(s)
				return d.picture(m[2], m[1])
			})
			line = wikiPicture.ReplaceAllStringFunc(line, func(s string) string {
				m := wikiPicture.FindStringSubmatch(s)
				return d.picture(m[1], m[2])
			})
			line = htmlPicture.ReplaceAllStringFunc(line, func(s string) string {
				to, alt := htmlSource.FindStringSubmatch(s), htmlAlt.FindStringSubmatch(s)
				if to == nil {
					return ""
				}
				if alt == nil {
					return d.picture(to[1], "")
				}
				return d.picture(to[1], alt[1])
			})
			line = d.notesLinked(line)
		}
		out[i] = line
	}
	return out
}

// found is the file that a note means by a path, "" where there is none: beside
// the note, from the folder's root, or anywhere by its name.
func (d *draft) found(to string) string {
	name := strings.ReplaceAll(to, "\\", "/")
	if plain, err := url.PathUnescape(name); err == nil {
		name = plain
	}
	name, _, _ = strings.Cut(name, "#")
	for _, try := range []string{path.Join(path.Dir(d.name), name), path.Clean(strings.TrimPrefix(name, "/"))} {
		if !fs.ValidPath(try) {
			continue
		}
		if info, err := fs.Stat(d.fsys, try); err == nil && info.Mode().IsRegular() && d.known(try) {
			return try
		}
	}
	return d.files[strings.ToLower(path.Base(name))]
}

// known reports whether the walk saw a file, which leaves links out.
func (d *draft) known(name string) bool { return d.files[strings.ToLower(path.Base(name))] != "" }

// picture takes a picture along and gives the Markdown that shows it.
func (d *draft) picture(to, alt string) string {
	alt = strings.TrimSpace(strings.NewReplacer("[", "(", "]", ")", "\n", " ").Replace(alt))
	if strings.Contains(to, "://") || strings.HasPrefix(to, "data:") {
		d.unsure("A picture of the web was left out: " + quoted(to) + ". Save it into the sheet's folder.")
		return alt
	}
	name := d.found(to)
	if name == "" {
		d.unsure("The picture " + quoted(to) + " is not in the folder.")
		return alt
	}
	d.taken[name] = true
	data, ending, why := d.copied(name)
	if why != "" {
		d.unsure("The picture " + quoted(name) + " was left out: " + why + ".")
		d.result.Report = append(d.result.Report, "left: "+name+" ("+why+")")
		return alt
	}
	base := strings.TrimSuffix(path.Base(d.file), ".md") + "-" + clean(strings.TrimSuffix(path.Base(name), path.Ext(name)))
	d.result.Files[path.Join(path.Dir(d.file), base+ending)] = data
	d.pictures++
	if alt == "" || strings.EqualFold(alt, path.Base(name)) || len(strings.Fields(alt)) < 3 {
		d.unsure("The picture " + base + ending + " needs words that say what it shows.")
		if alt == "" {
			alt = "Picture from the old notes"
		}
	}
	return "![" + alt + "](" + base + ending + ")"
}

// copied reads a picture in a kind that a sheet may show; why says why not.
func (d *draft) copied(name string) (data []byte, ending, why string) {
	ending = strings.ToLower(path.Ext(name))
	switch ending {
	case ".heic", ".heif":
		return nil, "", whyLeft(name)
	case ".jpg", ".jpeg", ".png", ".gif", ".webp":
	default:
		return nil, "", "only JPEG, PNG, GIF and WebP are taken"
	}
	info, err := fs.Stat(d.fsys, name)
	if err != nil || info.Size() > photo.MostBytes {
		return nil, "", "it is too large"
	}
	if data, err = fs.ReadFile(d.fsys, name); err != nil {
		return nil, "", "it cannot be read"
	}
	if ending == ".gif" || ending == ".webp" {
		if data, why = asPNG(data); why != "" {
			return nil, "", why
		}
		ending = ".png"
	}
	if _, err := photo.Read(data); err != nil {
		return nil, "", err.Error()
	}
	return data, ending, ""
}

// asPNG writes a GIF's first picture, or a WebP, as PNG.
func asPNG(data []byte) (out []byte, why string) {
	config, _, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return nil, "it is no picture"
	}
	if config.Width < 1 || config.Height < 1 || config.Width*config.Height > photo.MostPixels {
		return nil, "it has too many pixels"
	}
	picture, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, "it is broken"
	}
	var b bytes.Buffer
	if err := png.Encode(&b, picture); err != nil {
		return nil, "it cannot be written as PNG"
	}
	return b.Bytes(), ""
}

// notesLinked turns the links of a line to other notes to their drafts.
func (d *draft) notesLinked(line string) string {
	line = markdownLink.ReplaceAllStringFunc(line, func(s string) string {
		m := markdownLink.FindStringSubmatch(s)
		if strings.Contains(m[2], "://") || strings.HasPrefix(m[2], "#") || strings.HasPrefix(m[2], "mailto:") {
			return s
		}
		if to := d.to[d.found(m[2])]; to != "" {
			return "[" + m[1] + "](" + from(d.file, to) + ")"
		}
		if d.result.Files[path.Join(path.Dir(d.file), m[2])] != nil {
			return s // a picture that was just taken
		}
		d.unsure("The link to " + quoted(m[2]) + " leads nowhere.")
		return m[1]
	})
	return wikiLink.ReplaceAllStringFunc(line, func(s string) string {
		m := wikiLink.FindStringSubmatch(s)
		words := m[2]
		if words == "" {
			words = m[1]
		}
		for _, ending := range noteEndings {
			if to := d.to[d.found(m[1]+ending)]; to != "" {
				return "[" + words + "](" + from(d.file, to) + ")"
			}
		}
		d.unsure("The link to " + quoted(m[1]) + " leads nowhere.")
		return words
	})
}

// from is the way from one file of the book to another.
func from(file, to string) string {
	if path.Dir(file) == path.Dir(to) {
		return path.Base(to)
	}
	return "../" + to
}

// quoted shows a path of the notes as code, so that nothing in it is read as
// Markdown.
func quoted(s string) string {
	if len(s) > 120 {
		s = s[:120] + "…"
	}
	return "`" + strings.ReplaceAll(strings.ToValidUTF8(s, ""), "`", "'") + "`"
}
