package output

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"

	"whorl/chart/scene"
	"whorl/chart/typeface"
)

// pageTree is the object that names the pages, by the renderer's numbers.
const pageTree = 3

var (
	kids      = regexp.MustCompile(`/Kids\[([^\]]*)\]`)
	reference = regexp.MustCompile(`(\d+) 0 R`)
)

// outlineItem is an entry of the outline (ISO 32000-1, 12.3.3), by the number of
// its object; those it is linked with are 0 where there are none.
type outlineItem struct {
	mark                             scene.Bookmark
	number, parent                   int
	before, after, firstKid, lastKid int
	descendants                      int
}

// addOutline adds the outline as objects of the document and gives the number of
// the one at its root: 0 when there are no bookmarks.
func (f *pdfFile) addOutline(marks []scene.Bookmark, pages []*scene.Scene) (int, error) {
	if len(marks) == 0 {
		return 0, nil
	}
	list := kids.FindSubmatch(f.body(pageTree))
	if list == nil {
		return 0, errPDF
	}
	refs := reference.FindAllSubmatch(list[1], -1)
	if len(refs) != len(pages) {
		return 0, errPDF
	}
	root := len(f.objects)
	items := linked(marks, root)
	var b bytes.Buffer
	fmt.Fprintf(&b, "<</Type/Outlines/First %d 0 R/Last %d 0 R/Count %d>>", items[0].firstKid, items[0].lastKid, items[0].descendants)
	f.add(b.Bytes())
	for _, it := range items[1:] {
		if it.mark.Page < 0 || it.mark.Page >= len(pages) {
			return 0, fmt.Errorf("the bookmark %q is to page %d of %d", it.mark.Title, it.mark.Page+1, len(pages))
		}
		b.Reset()
		fmt.Fprintf(&b, "<</Title%s/Parent %d 0 R", pdfString(typeface.Clean(it.mark.Title)), it.parent)
		for _, link := range []struct {
			name string
			to   int
		}{{"Prev", it.before}, {"Next", it.after}, {"First", it.firstKid}, {"Last", it.lastKid}} {
			if link.to > 0 {
				fmt.Fprintf(&b, "/%s %d 0 R", link.name, link.to)
			}
		}
		if it.descendants > 0 {
			fmt.Fprintf(&b, "/Count %d", it.descendants)
		}
		const ptPerMM = 72 / 25.4
		up := (pages[it.mark.Page].Height - it.mark.Y) * ptPerMM
		fmt.Fprintf(&b, "/Dest[%s 0 R/XYZ null %s null]>>", refs[it.mark.Page][1], strconv.FormatFloat(up, 'f', 2, 64))
		f.add(b.Bytes())
	}
	return root, nil
}

// linked are the entries of an outline linked with one another, behind the one at
// its root, which has the object number given.
func linked(marks []scene.Bookmark, root int) []outlineItem {
	items := []outlineItem{{number: root}}
	open := []int{0} // the entries that the next one may lie in, by level
	for i, m := range marks {
		level := min(max(m.Level, 1), len(open))
		open = open[:level]
		up := open[level-1]
		it := outlineItem{mark: m, number: root + 1 + i, parent: items[up].number}
		if last := items[up].lastKid; last > 0 {
			it.before = last
			items[last-root].after = it.number
		} else {
			items[up].firstKid = it.number
		}
		items[up].lastKid = it.number
		items = append(items, it)
		open = append(open, len(items)-1)
		for _, k := range open[:level] {
			items[k].descendants++
		}
	}
	return items
}
