package survey

// Method is a way to place a mark.
type Method string

// Methods of placing.
const (
	UpAndOver      Method = "up and over"
	TwoTapes       Method = "two tapes"
	WithGuideLines Method = "up and over from guide lines"
)

// Methods in the order in which a crew prefers them: the quickest first.
var Methods = []Method{UpAndOver, TwoTapes, WithGuideLines}

// Way is how well one method places a mark.
type Way struct {
	Method     Method
	Usable     bool   // the method gives the mark at all, here and with this team
	Why        string // why it does not, in words
	Covariance Covariance2
	Ellipse    Ellipse // 95 %
}

// Place fills in a way whose errors are known.
func (w Way) Place(c Covariance2) Way {
	w.Usable, w.Why, w.Covariance, w.Ellipse = true, "", c, c.Ellipse95()
	return w
}

// Advise returns the index of the way to use: the first in their order whose 95 %
// ellipse is nowhere longer than allowed metres from its middle; where there is
// none, the one with the shortest. It is −1 when none is usable. good tells whether
// the one returned stays within what is allowed.
func Advise(ways []Way, allowed float64) (best int, good bool) {
	best = -1
	for i, w := range ways {
		switch {
		case !w.Usable:
		case w.Ellipse.Major <= allowed:
			return i, true
		case best < 0 || w.Ellipse.Major < ways[best].Ellipse.Major:
			best = i
		}
	}
	return best, false
}
