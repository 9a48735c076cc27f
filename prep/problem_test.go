package prep

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"strings"
	"testing"
)

// rulesInSource returns the value of every Rule constant of this package.
func rulesInSource(t *testing.T) map[string]string {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), "problem.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	ast.Inspect(file, func(n ast.Node) bool {
		v, ok := n.(*ast.ValueSpec)
		if !ok || !strings.HasPrefix(v.Names[0].Name, "Rule") || len(v.Values) == 0 {
			return true
		}
		if lit, ok := v.Values[0].(*ast.BasicLit); ok {
			s, _ := strconv.Unquote(lit.Value)
			out[v.Names[0].Name] = s
		}
		return true
	})
	return out
}

func TestEveryRuleHasASentence(t *testing.T) {
	rules := rulesInSource(t)
	if len(rules) != len(sentences) {
		t.Errorf("%d rules and %d sentences", len(rules), len(sentences))
	}
	for name, rule := range rules {
		if sentences[rule] == nil {
			t.Errorf("%s has no sentence", name)
			continue
		}
		for _, p := range []Problem{{Rule: rule, Where: "The wall", Got: "3", Limit: "4"}, {Rule: rule}} {
			s := p.Sentence()
			if s == "" || strings.Contains(s, "%!") || strings.Contains(s, "  ") && p.Where != "" {
				t.Errorf("%s says %q", name, s)
			}
		}
	}
}

func TestProblemInWords(t *testing.T) {
	for want, p := range map[string]Problem{
		"The stair sticks out of the floor: 3 m of 9 m lie outside.":     {Rule: RuleOutside, Where: "The stair", Got: "3 m", Limit: "9 m"},
		"Hall: its owner has not been asked what tape the floor takes.":  {Rule: RuleOwner, Where: "Hall"},
		"2 rolls of Red cloth must still be ordered by Monday 10 March.": {Rule: RuleTape, Where: "Red cloth", Got: "2 rolls", Limit: "Monday 10 March"},
		"2 rolls of Red cloth must still be ordered.":                    {Rule: RuleTape, Where: "Red cloth", Got: "2 rolls"},
		"Hall: colour is red, wanted blue.":                              {Rule: "colour", Where: "Hall", Got: "red", Limit: "blue"},
	} {
		if got := p.Sentence(); got != want {
			t.Errorf("says %q, want %q", got, want)
		}
	}
}

func TestNamesWithCommasAreListedWithSemicolons(t *testing.T) {
	for want, names := range map[string][]string{
		"Bed, Trunk and Porch":                   {"Bed", "Trunk", "Porch"},
		"Bed; Wall, stage left; and Porch":       {"Bed", "Wall, stage left", "Porch"},
		"Wall, stage left and Wall, stage right": {"Wall, stage left", "Wall, stage right"},
	} {
		if got := Listed(names); got != want {
			t.Errorf("listed as %q, want %q", got, want)
		}
	}
}
