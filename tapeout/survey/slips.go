package survey

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Compare tells whether a check measure (metres) agrees with what the plan
// expects to within allowed, and if not, the likeliest cause in plain words. The
// causes are those of the trade (common practice, no source): a whole foot, ten
// centimetres, an inch or a metre counted wrong, figures transposed, feet and
// inches exchanged, a 6 read as a 9. A cause is a suggestion: the measure has to
// be repeated in any case.
func Compare(expected, read, allowed float64) (ok bool, cause string) {
	off := read - expected
	if !(expected >= 0 && expected <= longest && read >= 0 && read <= longest) {
		return false, "not a length: measure again"
	}
	if math.Abs(off) <= allowed {
		return true, ""
	}
	way := "long"
	if off < 0 {
		way = "short"
	}
	best, name := math.Inf(1), ""
	for _, s := range slips {
		if miss, found := s.find(expected, read); found && miss <= math.Min(allowed, math.Abs(off)/4) && miss < best-1e-4 {
			best, name = miss, s.name(way)
		}
	}
	if name == "" {
		return false, fmt.Sprintf("%.3f m too %s, by none of the usual slips: measure again, then look at both marks", math.Abs(off), way)
	}
	return false, name
}

// Slip tells whether a cause that Compare gives names one of the usual slips.
func Slip(cause string) bool { return cause != "" && !strings.Contains(cause, "measure again") }

// slip is one way to misread a tape. find returns by how many metres the reading
// would still be off if that is what happened.
type slip struct {
	name func(way string) string
	find func(expected, read float64) (miss float64, found bool)
}

// slips in order of how often they happen; a later one has to fit better.
var slips = []slip{
	counted(0.3048, "a whole foot too %s"),
	counted(0.1, "ten centimetres too %s"),
	counted(0.0254, "an inch too %s"),
	counted(1, "a whole metre too %s"),
	transposedMetric,
	exchangedFeet,
	upsideDown,
	counted(0.6096, "two whole feet too %s"),
	counted(0.9144, "three whole feet too %s"),
	counted(0.2, "twenty centimetres too %s"),
	counted(0.0508, "two inches too %s"),
	counted(2, "two whole metres too %s"),
}

// counted is a unit counted once too often or too seldom, or a tape held at that
// graduation in place of its zero.
func counted(unit float64, says string) slip {
	return slip{
		name: func(way string) string { return fmt.Sprintf(says, way) },
		find: func(expected, read float64) (float64, bool) {
			return math.Abs(math.Abs(read-expected) - unit), true
		},
	}
}

// transposedMetric is two neighbouring figures of a reading in millimetres
// exchanged: 3.420 for 3.240.
var transposedMetric = slip{
	name: func(string) string { return "two figures transposed, in metres" },
	find: func(expected, read float64) (float64, bool) {
		return nearestVariant(expected, read, func(figures []byte, i int) bool {
			if i+1 == len(figures) || figures[i] == figures[i+1] {
				return false
			}
			figures[i], figures[i+1] = figures[i+1], figures[i]
			return true
		})
	},
}

// upsideDown is a 6 read as a 9 or a 9 as a 6, in millimetres.
var upsideDown = slip{
	name: func(string) string { return "a 6 read as a 9, or a 9 as a 6" },
	find: func(expected, read float64) (float64, bool) {
		return nearestVariant(expected, read, func(figures []byte, i int) bool {
			switch figures[i] {
			case '6':
				figures[i] = '9'
			case '9':
				figures[i] = '6'
			default:
				return false
			}
			return true
		})
	},
}

// nearestVariant changes the figures of a reading in millimetres at one place at
// a time and returns how near any result comes to what was expected.
func nearestVariant(expected, read float64, change func(figures []byte, i int) bool) (float64, bool) {
	written := strconv.Itoa(int(math.Round(read * 1000)))
	best, found := math.Inf(1), false
	for i := range written {
		figures := []byte(written)
		if !change(figures, i) {
			continue
		}
		if mm, err := strconv.Atoi(string(figures)); err == nil {
			best, found = math.Min(best, math.Abs(float64(mm)/1000-expected)), true
		}
	}
	return best, found
}

// exchangedFeet is 8' 5" for 5' 8".
var exchangedFeet = slip{
	name: func(string) string { return "feet and inches exchanged" },
	find: func(expected, read float64) (float64, bool) {
		inches := read / 0.0254
		feet := math.Floor(inches/12 + 1e-9)
		rest := inches - 12*feet
		whole := math.Floor(rest + 1e-9)
		swapped := (12*whole + feet + rest - whole) * 0.0254
		return math.Abs(swapped - expected), feet < 12 && feet != whole
	},
}
