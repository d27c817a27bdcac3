package stitch

import "fmt"

// How says in words how a stitch is made that is worked in some way: stitches
// worked together, clusters, popcorns, and stitches around a post. It is "" for
// those that a maker is taken to know, and those that designers make each in their
// own way. Common practice, no source.
func (k Kind) How(in Into, t Terms) string {
	if k.Manner != 0 || k.Base < Single {
		return ""
	}
	switch {
	case k.Shape == Plain && in == FrontPost:
		return k.Name(t) + " around the post of the st: hook in from the front, behind the post and out to the front"
	case k.Shape == Plain && in == BackPost:
		return k.Name(t) + " around the post of the st: hook in from the back, in front of the post and out to the back"
	case in == FrontPost || in == BackPost || k.Legs < 2:
		return ""
	case k.Shape == Together:
		return k.legs("next st", t)
	case k.Shape == Cluster:
		return k.legs("same place", t)
	case k.Shape == Popcorn:
		return fmt.Sprintf("%d %s in same place, take the hook out, insert it in the first of them from the front, pull the loop through", k.Legs, k.Base.Name(t))
	}
	return ""
}

// legs says how unfinished stitches are closed together.
func (k Kind) legs(place string, t Terms) string {
	over := "yo"
	if t == UK {
		over = "yoh"
	}
	leg, loops := "", 1 // that each leg leaves on the hook
	switch n := int(k.Base - Double); {
	case k.Base == Single:
	case k.Base == Half:
		leg, loops = over+", ", 2
	case n == 0:
		leg = over + ", "
	default:
		leg = over + " " + times(n+1) + ", "
	}
	leg += "insert hook in " + place + ", " + over + " and pull up a loop"
	switch n := int(k.Base - Double); {
	case k.Base < Double:
	case n == 0:
		leg += ", " + over + " and pull through 2 loops"
	default:
		leg += ", (" + over + " and pull through 2 loops) " + times(n+1)
	}
	return fmt.Sprintf("[%s] %s, %s and pull through all %d loops on hook", leg, times(k.Legs), over, k.Legs*loops+1)
}

func times(n int) string {
	if n == 2 {
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}
