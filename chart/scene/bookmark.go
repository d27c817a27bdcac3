package scene

// Bookmark is an entry in the outline of a document whose pages are scenes.
type Bookmark struct {
	Title string
	// Level is how deep it lies in the outline, from 1. One that lies more than a
	// level deeper than the one before it is taken to lie one level deeper.
	Level int
	Page  int     // index of the page
	Y     float64 // millimetres from the top of the page
}
