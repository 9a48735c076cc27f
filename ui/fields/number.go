package fields

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"fyne.io/fyne/v2/widget"
)

var (
	_ Field = (*Whole)(nil)
	_ Field = (*Decimal)(nil)
	_ Field = (*Money)(nil)
)

// Whole is a whole number within limits.
type Whole struct {
	typed
	min, max int
	// OnCommit is asked to take the number.
	OnCommit func(value int) error
}

// NewWhole returns a field for whole numbers from min to max; unit, which may be empty, is shown after it.
func NewWhole(unit string, min, max int) *Whole {
	w := &Whole{min: min, max: max}
	w.start(w, w.taken, widget.NewLabel(unit))
	return w
}

// Set shows the number.
func (w *Whole) Set(value int) { w.setText(strconv.Itoa(value)) }

func (w *Whole) taken(text string) error {
	v, err := strconv.Atoi(strings.ReplaceAll(strings.TrimSpace(text), ",", ""))
	if err != nil {
		return fmt.Errorf("“%s” is not a whole number; type one such as %d", text, max(w.min, min(3, w.max)))
	}
	if v < w.min || v > w.max {
		return fmt.Errorf("%d is out of range; type a number from %d to %d", v, w.min, w.max)
	}
	if w.OnCommit == nil {
		return nil
	}
	return w.OnCommit(v)
}

// Decimal is a number with decimals within limits.
type Decimal struct {
	typed
	min, max float64
	// OnCommit is asked to take the number.
	OnCommit func(value float64) error
}

// NewDecimal returns a field for numbers from min to max; unit, which may be empty, is shown after it.
func NewDecimal(unit string, min, max float64) *Decimal {
	d := &Decimal{min: min, max: max}
	d.start(d, d.taken, widget.NewLabel(unit))
	return d
}

// Set shows the number with as many decimals as it has.
func (d *Decimal) Set(value float64) { d.setText(decimal(value)) }

func decimal(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func (d *Decimal) taken(text string) error {
	v, err := strconv.ParseFloat(strings.ReplaceAll(strings.TrimSpace(text), ",", "."), 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return fmt.Errorf("“%s” is not a number; type one such as 2.5", text)
	}
	if v < d.min || v > d.max {
		return fmt.Errorf("%s is out of range; type a number from %s to %s", decimal(v), decimal(d.min), decimal(d.max))
	}
	if d.OnCommit == nil {
		return nil
	}
	return d.OnCommit(v)
}

// Money is an amount of money, held in whole cents.
type Money struct {
	typed
	// OnCommit is asked to take the amount.
	OnCommit func(cents int) error
}

// NewMoney returns a field for amounts; currency is shown after it.
func NewMoney(currency string) *Money {
	m := &Money{}
	m.start(m, m.taken, widget.NewLabel(currency))
	return m
}

// Set shows the amount.
func (m *Money) Set(cents int) { m.setText(FormatCents(cents)) }

func (m *Money) taken(text string) error {
	cents, err := ParseCents(text)
	if err != nil || m.OnCommit == nil {
		return err
	}
	return m.OnCommit(cents)
}

// FormatCents writes an amount with two decimals: 1250 is 12.50.
func FormatCents(cents int) string {
	sign, n := "", uint64(cents)
	if cents < 0 {
		sign, n = "-", -uint64(cents)
	}
	return fmt.Sprintf("%s%d.%02d", sign, n/100, n%100)
}

// ParseCents reads an amount, with or without a currency sign before or after it, thousands commas, and a point or a
// comma before the cents. Parts of a cent are refused, not rounded. Amounts below nothing and above ten million are
// taken for slips.
func ParseCents(text string) (int, error) {
	s := strings.TrimFunc(text, func(r rune) bool { return !strings.ContainsRune("-.,0123456789", r) })
	bad := fmt.Errorf("“%s” is not an amount; type one such as 12.50", strings.TrimSpace(text))
	if n := len(s); n > 3 && s[n-3] == ',' && !strings.Contains(s, ".") {
		s = s[:n-3] + "." + s[n-2:]
	}
	whole, part, _ := strings.Cut(strings.ReplaceAll(s, ",", ""), ".")
	if strings.HasPrefix(whole, "-") {
		return 0, errors.New("an amount cannot be below nothing")
	}
	if whole+part == "" || !allDigits(whole+part) {
		return 0, bad
	}
	if len(strings.TrimRight(part, "0")) > 2 {
		return 0, fmt.Errorf("“%s” has parts of a cent; type two decimals at most", strings.TrimSpace(text))
	}
	cents, err := strconv.Atoi(strings.TrimLeft(whole, "0") + (part + "00")[:2])
	if err != nil || cents > 1e9 {
		return 0, fmt.Errorf("“%s” is more than this program reckons with", strings.TrimSpace(text))
	}
	return cents, nil
}

func allDigits(s string) bool { return strings.Trim(s, "0123456789") == "" }
