package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"slices"

	"whorl/chart/output"
	"whorl/patterns"
)

// cssDensity is how many pixels an inch has where an SVG is shown on a page
// (CSS Values and Units, level 3, 5.2).
const cssDensity = 96

// manifest is the list of a post's pictures. Its fields are kept from version
// to version; new ones may be added.
type manifest struct {
	Title    string        `json:"title"`
	Pictures []postPicture `json:"pictures"`
}

// postPicture is one picture in all the files of the set that it is in.
type postPicture struct {
	Name  string     `json:"name"`
	Alt   string     `json:"alt"` // what stands where the picture cannot be seen
	Files []postFile `json:"files"`
}

type postFile struct {
	File   string `json:"file"`
	Width  int    `json:"width_px"`
	Height int    `json:"height_px"`
}

// post writes the set that a file asks for with post: a PNG of every picture in
// every width beside its SVG, and the manifest of them. The manifest of all
// pictures is left as it is when only one is drawn.
func (d *drawing) post(p *patterns.Pattern, sheets []sheet, out io.Writer) error {
	if len(p.PostWidths) == 0 || len(sheets) == 0 {
		return nil
	}
	m := manifest{Title: p.Title, Pictures: []postPicture{}}
	for _, s := range sheets {
		picture := postPicture{Name: s.name, Alt: s.scene.Alt}
		if slices.Contains(d.formats, "svg") {
			px := func(mm float64) int { return int(math.Round(mm / 25.4 * cssDensity)) }
			picture.Files = append(picture.Files, postFile{s.name + ".svg", px(s.scene.Width), px(s.scene.Height)})
		}
		if slices.Contains(d.formats, "png") {
			for _, width := range p.PostWidths {
				f := postFile{fmt.Sprintf("%s-%d.png", s.name, width), width, output.PixelHeight(s.scene, width)}
				name := filepath.Join(d.dir, f.File)
				if err := writeFile(name, func(w io.Writer) error { return output.PNG(w, s.scene, width) }); err != nil {
					return err
				}
				fmt.Fprintln(out, name)
				picture.Files = append(picture.Files, f)
			}
		}
		if len(picture.Files) > 0 {
			m.Pictures = append(m.Pictures, picture)
		}
	}
	if d.picture != "" || len(m.Pictures) == 0 {
		return nil
	}
	name := filepath.Join(d.dir, d.stem+"-post.json")
	if err := writeFile(name, func(w io.Writer) error {
		e := json.NewEncoder(w)
		e.SetEscapeHTML(false)
		e.SetIndent("", "  ")
		return e.Encode(m)
	}); err != nil {
		return err
	}
	fmt.Fprintln(out, name)
	return nil
}
