package demo

import "groundrow/tapeout/plan"

var (
	quay    = plan.SceneID(id("scene quay"))
	kitchen = plan.SceneID(id("scene kitchen"))
	attic   = plan.SceneID(id("scene upstairs"))
	storm   = plan.SceneID(id("scene storm"))
	market  = plan.SceneID(id("scene market"))
	parlour = plan.SceneID(id("scene parlour"))
	lamps   = plan.SceneID(id("scene lamps"))

	upper = plan.LevelID(id("level upper storey"))
	porch = plan.LevelID(id("level porch"))
)

func (b *builder) scenes() {
	p := &b.p.Plan
	p.Title = "The Lantern House, ground plan"
	p.Revision = "4"
	p.Scale = 48
	p.Baseline = plan.PlasterLine
	p.Levels = []plan.Level{
		{ID: porch, Name: "Porch", Height: ft(1, 6)},
		{ID: upper, Name: "Upper storey", Height: ft(9)},
	}
	p.Scenes = []plan.Scene{
		{ID: quay, Name: "1.1 The quay at dusk"},
		{ID: kitchen, Name: "1.2 The kitchen"},
		{ID: attic, Name: "1.3 Upstairs"},
		{ID: storm, Name: "1.4 The storm"},
		{ID: market, Name: "2.1 Market day"},
		{ID: parlour, Name: "2.2 The parlour"},
		{ID: lamps, Name: "2.3 The lamps are lit"},
	}
}
