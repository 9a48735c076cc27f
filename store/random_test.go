package store

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"time"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plan"
)

// randomProduction fills every field of every type that a production holds, found
// by reflection, so that a field which the tables forget comes back empty. Only
// identifiers and what refers to them are then made to agree.
func randomProduction(seed uint64) *prep.Production {
	r := &filler{Rand: rand.New(rand.NewPCG(seed, 7))}
	p := &prep.Production{}
	r.fill(reflect.ValueOf(p).Elem(), false)
	p.Settings.Unit = "ft"
	p.Settings.WeakAngle = r.Float64() * 180
	p.Plan.Scale = math.Abs(p.Plan.Scale)
	refer(p)
	return p
}

type filler struct {
	*rand.Rand
	count int
}

// measured are the types whose numbers the file holds to be at least zero.
var measured = map[reflect.Type]bool{
	reflect.TypeFor[prep.Reading](): true, reflect.TypeFor[floor.Way](): true, reflect.TypeFor[floor.Wishes](): true, reflect.TypeFor[prep.Settings](): true, reflect.TypeFor[prep.Rates](): true, reflect.TypeFor[prep.Errors](): true, reflect.TypeFor[prep.Task](): true,
	reflect.TypeFor[prep.Object](): true, reflect.TypeFor[marks.Rules](): true, reflect.TypeFor[marks.DanceLine](): true,
	reflect.TypeFor[floor.MeasuredWall](): true, reflect.TypeFor[floor.Diagonal](): true,
	reflect.TypeFor[supplies.Stock](): true, reflect.TypeFor[supplies.Item](): true, reflect.TypeFor[supplies.Allowances](): true,
}

func (r *filler) fill(v reflect.Value, positive bool) {
	if v.Type() == reflect.TypeFor[time.Time]() {
		zone := time.FixedZone("", 900*(r.IntN(100)-50))
		v.Set(reflect.ValueOf(time.Unix(r.Int64N(1<<32)+1, r.Int64N(1e9)).In(zone)))
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			r.fill(v.Field(i), measured[v.Type()])
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2+r.IntN(3), 8))
		for i := range v.Len() {
			r.fill(v.Index(i), positive)
		}
	case reflect.String:
		r.count++
		v.SetString(fmt.Sprintf("%d ½ “ü” %c", r.count, 'a'+r.IntN(26)))
	case reflect.Float64:
		x := r.float()
		if positive {
			x = math.Abs(x)
		}
		v.SetFloat(x)
	case reflect.Int:
		v.SetInt(1 + r.Int64N(1<<60))
	case reflect.Bool:
		v.SetBool(true)
	default:
		panic("no filling for " + v.Type().String())
	}
}

// float returns a double of any magnitude, whole, tiny and huge ones included;
// never zero, which would hide a forgotten field.
func (r *filler) float() float64 {
	for {
		x := math.Float64frombits(r.Uint64())
		switch r.IntN(4) {
		case 0:
			x = float64(1 + r.IntN(1000))
		case 1:
			x = (r.Float64() - 0.5) * 40
		}
		if x != 0 && !math.IsNaN(x) && !math.IsInf(x, 0) {
			return x
		}
	}
}

// refer makes references name what is there, in another order than it stands.
func refer(p *prep.Production) {
	elements, scenes, floors := p.Plan.Elements, p.Plan.Scenes, p.Floors
	element := func(i int) plan.ElementID { return elements[(i+1)%len(elements)].ID }
	scene := func(i int) plan.SceneID { return scenes[(i+1)%len(scenes)].ID }
	room := func(i int) floor.ID { return floors[(i+1)%len(floors)].ID }
	for i := range elements {
		e := &elements[i]
		e.Level = p.Plan.Levels[i%len(p.Plan.Levels)].ID
		e.Stock = p.Stocks[i%len(p.Stocks)].ID
		e.Rides = element(i)
		e.Stands = e.Stands[:2]
		for j := range e.Stands {
			e.Stands[j].Scene = scene(j)
		}
	}
	for i := range p.Plan.Carries {
		c := &p.Plan.Carries[i]
		c.Carrier, c.Scene = element(i), scene(i/len(elements))
	}
	for i := range floors {
		floors[i].Treatments = floors[i].Treatments[:2]
		for j := range floors[i].Treatments {
			floors[i].Treatments[j].Element = element(j)
		}
	}
	for i := range p.DanceLines {
		p.DanceLines[i].Floor = room(i)
	}
	for i := range p.Issued {
		p.Issued[i].Floor = room(i)
	}
	for i := range p.Progress {
		p.Progress[i].Floor = room(i)
	}
	for i := range p.MethodChoices {
		p.MethodChoices[i].Floor = room(i)
	}
	for i := range p.Readings {
		p.Readings[i].Floor = room(i)
	}
	for i := range p.Moves {
		m := &p.Moves[i]
		m.Floor, m.Element, m.Scene = room(i), element(i), scene(i)
	}
	for i := range p.KnownPoints {
		p.KnownPoints[i].Drawing = p.Drawings[i%len(p.Drawings)].ID
	}
	for i := range p.Tasks {
		t := &p.Tasks[i]
		t.Floor = room(i)
		t.After, t.People = t.After[:1], t.People[:2]
		t.After[0] = p.Tasks[(i+1)%len(p.Tasks)].ID
		t.People[0], t.People[1] = p.People[1].ID, p.People[0].ID
	}
	for i := range p.StandIns {
		s := &p.StandIns[i]
		s.Element, s.Scene, s.Object = element(i), scene(i), p.Objects[i%len(p.Objects)].ID
	}
	for i := range p.Notes {
		p.Notes[i].Element = element(i)
	}
	for i := range p.Answers {
		p.Answers[i].Floor, p.Answers[i].Element = room(i), element(i)
	}
}
