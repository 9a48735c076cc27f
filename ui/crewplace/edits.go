package crewplace

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/ui/grid"
)

var (
	errNoTask   = errors.New("this task is gone: somebody else has deleted it")
	errNoPerson = errors.New("this person is gone: somebody else has taken them out")
	errSelf     = errors.New("a task cannot come after itself")
	errCounted  = errors.New("the time of this task follows from what it is counted by; count it by typed hours to type it")
	errNameless = errors.New("a name is needed: type one")
)

// Bounds of what is believed; beyond them it is a slip.
const (
	mostHours = 720
	mostHands = 50
)

func newTask(p *prep.Production) prep.Task {
	return prep.Task{ID: uuid.NewString(), Name: unused("New task", taskNames(p)), Count: prep.ByHours, Hours: 1, Hands: 1}
}

func newPerson(p *prep.Production) prep.Person {
	return prep.Person{ID: uuid.NewString(), Name: unused("New person", personNames(p)), Hands: true}
}

// unused returns a name that is not among the names: tasks and people are chosen by name.
func unused(name string, names []string) string {
	for n := 1; ; n++ {
		try := name
		if n > 1 {
			try += " " + strconv.Itoa(n)
		}
		if !slices.Contains(names, try) {
			return try
		}
	}
}

// onTask makes a change to one task of the production that it is given.
func onTask(id string, change func(*prep.Production, *prep.Task) error) func(*prep.Production) error {
	return func(p *prep.Production) error {
		if t := taskOf(p, id); t != nil {
			return change(p, t)
		}
		return errNoTask
	}
}

func onPerson(id string, change func(*prep.Person) error) func(*prep.Production) error {
	return func(p *prep.Production) error {
		if x := personOf(p, id); x != nil {
			return change(x)
		}
		return errNoPerson
	}
}

// taskEdit turns what was typed into a cell into a change of the task and its name.
func taskEdit(p *prep.Production, id string, column int, text string) (label string, change func(*prep.Production) error) {
	name := "a task"
	if t := taskOf(p, id); t != nil {
		name = t.Name
	}
	text = strings.TrimSpace(text)
	return "Change " + name + ": " + strings.ToLower(taskColumns()[column].Title),
		onTask(id, func(p *prep.Production, t *prep.Task) error { return setTask(p, t, column, text) })
}

// setTask writes one cell of a task.
func setTask(p *prep.Production, t *prep.Task, column int, text string) error {
	var err error
	switch column {
	case colTask:
		err = setName(&t.Name, text)
	case colDone:
		t.Done = grid.Ticked(text)
	case colCount:
		err = setCount(t, text)
	case colFloor:
		return setFloor(p, t, text)
	case colHours:
		if countOf(*t) != prep.ByHours {
			return errCounted
		}
		t.Hours, err = readNumber(text, mostHours)
	case colHands:
		err = setHands(t, text)
	case colPeople:
		return setPeople(p, t, text)
	case colAfter:
		return setAfter(p, t, text)
	case colTaskNote:
		t.Note = text
	default:
		return setTime(p, t, column, text)
	}
	return err
}

func setTime(p *prep.Production, t *prep.Task, column int, text string) error {
	into, e := &t.Earliest, opening
	switch column {
	case colDue:
		into, e = &t.Due, closing
	case colPinned:
		into = &t.Pinned
	}
	at, err := readMoment(text, p, e)
	if err == nil {
		*into = at
	}
	return err
}

func setName(into *string, text string) error {
	if text == "" {
		return errNameless
	}
	*into = text
	return nil
}

func setCount(t *prep.Task, text string) error {
	i := slices.IndexFunc(prep.Counts, func(c prep.Count) bool { return strings.EqualFold(string(c), text) })
	if i < 0 {
		return fmt.Errorf("“%s” is not counted here; choose one of: %s", text, strings.Join(countNames(), ", "))
	}
	t.Count = prep.Counts[i]
	return nil
}

func setFloor(p *prep.Production, t *prep.Task, text string) error {
	if text == "" || strings.EqualFold(text, noFloor) {
		t.Floor = ""
		return nil
	}
	for _, f := range p.Floors {
		if strings.EqualFold(f.Name, text) {
			t.Floor = f.ID
			return nil
		}
	}
	return fmt.Errorf("there is no floor “%s”; choose one of: %s", text, strings.Join(floorNames(p), ", "))
}

func setHands(t *prep.Task, text string) error {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > mostHands {
		return fmt.Errorf("“%s” is not a number of people from 1 to %d", text, mostHands)
	}
	t.Hands = n
	return nil
}

func setPeople(p *prep.Production, t *prep.Task, text string) error {
	if strings.EqualFold(text, "anyone") {
		text = ""
	}
	at, err := readNames(text, personNames(p))
	if err != nil {
		return err
	}
	t.People = nil
	for _, i := range at {
		t.People = addOnce(t.People, p.People[i].ID)
	}
	return nil
}

func setAfter(p *prep.Production, t *prep.Task, text string) error {
	at, err := readNames(text, taskNames(p))
	if err != nil {
		return err
	}
	var after []string
	for _, i := range at {
		if p.Tasks[i].ID == t.ID {
			return errSelf
		}
		after = addOnce(after, p.Tasks[i].ID)
	}
	t.After = after
	return nil
}

func addOnce(list []string, id string) []string {
	if slices.Contains(list, id) {
		return list
	}
	return append(list, id)
}

// readNumber reads a number from zero up.
func readNumber(text string, most float64) (float64, error) {
	v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	if err != nil || !(v >= 0 && v <= most) {
		return 0, fmt.Errorf("“%s” is not a number from 0 to %s; type one such as 1.5", text, decimal(most))
	}
	return v, nil
}

// personEdit turns what was typed into a cell into a change of the person and its name.
func personEdit(p *prep.Production, id string, column int, text string) (label string, change func(*prep.Production) error) {
	name := "a person"
	if x := personOf(p, id); x != nil {
		name = x.Name
	}
	text = strings.TrimSpace(text)
	return "Change " + name + ": " + strings.ToLower(peopleColumns()[column].Title),
		onPerson(id, func(x *prep.Person) error {
			switch column {
			case colName:
				return setName(&x.Name, text)
			case colRole:
				x.Role = text
			case colKneels:
				x.Hands = grid.Ticked(text)
			case colPhone:
				x.Phone = text
			case colNote:
				x.Note = text
			}
			return nil
		})
}

// workOf is how long a person works in the plan.
func workOf(plan prep.CrewPlan, person string) time.Duration {
	var sum time.Duration
	for _, a := range plan.Tasks {
		if slices.Contains(a.People, person) {
			sum += a.Work
		}
	}
	return sum
}
