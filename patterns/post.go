package patterns

import (
	"fmt"
	"slices"

	"gopkg.in/yaml.v3"
)

var postKeys = keys{"widths|width"}

const (
	postHelp   = "Write it as post: {widths: [1080, 1200]}."
	mostWidths = 10
)

// post reads the widths that a post's pictures are wanted in.
func (r *reader) post(e entry) []int {
	if !r.given(e, yaml.MappingNode, "a set of keys", postHelp) {
		return nil
	}
	m := r.mapping(e.value, "a post", postKeys)
	w := m["widths"]
	if !w.given() {
		r.at(e.value, codePicture, "the post does not say how wide its pictures are", postHelp)
		return nil
	}
	nodes := []*yaml.Node{w.value}
	if w.value.Kind == yaml.SequenceNode {
		nodes = w.value.Content
	}
	var widths []int
	for _, n := range nodes {
		if r.beyond(n, len(widths), mostWidths, "widths") {
			break
		}
		if n.Kind == yaml.ScalarNode && isNull(n) {
			r.at(n, codeEmpty, "a width is missing here", postHelp)
			continue
		}
		v := r.integer(entry{key: w.key, value: n}, minWidth, maxWidth, "px")
		switch {
		case v == 0:
		case slices.Contains(widths, v):
			r.at(n, codeDuplicate, fmt.Sprintf("the width %d is given twice", v), "Keep one of them.")
		default:
			widths = append(widths, v)
		}
	}
	if len(nodes) == 0 {
		r.at(w.value, codePicture, "the post does not say how wide its pictures are", postHelp)
	}
	return widths
}
