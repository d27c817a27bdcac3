package main

import (
	"encoding/json"
	"fmt"
	"os"

	"whorl/patterns/notation"
	"whorl/patterns/stitch"
)

func show(items []notation.Item, ind string) {
	for _, it := range items {
		b, _ := json.Marshal(it)
		s := string(b)
		if len(s) > 400 {
			s = s[:400]
		}
		fmt.Printf("%s%T %s\n", ind, it, s)
		switch it := it.(type) {
		case *notation.Repeat:
			show(it.Items, ind+"   ")
		case *notation.Group:
			show(it.Items, ind+"   ")
		}
	}
}

func main() {
	v := notation.NewVocabulary(stitch.US, []string{"shell"})
	t, f := notation.Parse([]notation.Line{{Text: os.Args[1], Line: 1, Column: 1}}, v, []string{""})
	for _, r := range t.Rounds {
		show(r.Items, "")
		fmt.Println(r.Stated)
	}
	fmt.Println(f)
}
