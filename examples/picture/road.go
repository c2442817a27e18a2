package picture

import (
	"math"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/units"
)

// roadPictures draws road speed over engine speed, a line for each gear, and where
// the speed asked for falls in top.
func roadPictures(v job.RoadResult) ([]Picture, error) {
	top := v.Table.ChangeAt
	if len(v.Table.Gears) == 0 || !v.Table.Gears[0].PerThousand.Taken() || top <= 0 {
		return nil, nil
	}
	p := sheet("engine, rev/min", "road, mile/h")
	most := top.RevolutionsPerMinute()
	grid(p)
	for i, g := range v.Table.Gears {
		speed := g.PerThousand.Value().Times(most / 1000).MilesPerHour()
		if err := drawn(p, plotter.XYs{{}, {X: most, Y: speed}}, i%3, vg.Points(1.6)); err != nil {
			return nil, err
		}
		say(p, most*1.015, speed, after, level, g.Name+": "+units.MilesPerHour(speed).In(units.MilePerHour, 0))
		p.Y.Max = max(p.Y.Max, speed*1.05)
	}
	last := v.Table.Gears[len(v.Table.Gears)-1]
	finding := "Top gear gives " + last.PerThousand.Value().In(units.MilePerHour, 1) + " for each 1000 rev/min"
	if last.EngineAt.Taken() {
		x, y := last.EngineAt.Value().RevolutionsPerMinute(), v.Table.At.MilesPerHour()
		if err := drawn(p, plotter.XYs{{X: 0, Y: y}, {X: x, Y: y}, {X: x, Y: 0}}, full, vg.Points(0.7)); err != nil {
			return nil, err
		}
		finding = v.Table.At.In(units.MilePerHour, 0) + " in top is about " + units.RevolutionsPerMinute(math.Round(x/10)*10).In(units.RevolutionPerMinute, 0)
		shout(p, most*0.02, y*1.03, after, above, v.Table.At.In(units.MilePerHour, 0))
	}
	p.X.Min, p.Y.Min, p.X.Max = 0, 0, most*1.27
	return []Picture{{Name: "road-speed", Title: "Road speed in each gear, up to " + top.In(units.RevolutionPerMinute, 0), Finding: finding, plot: p, h: tall}}, nil
}
