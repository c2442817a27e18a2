package picture

import (
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/units"
)

// roadPictures draws road speed over engine speed, a line for each gear.
func roadPictures(v job.RoadResult) ([]Picture, error) {
	top := v.Table.ChangeAt
	if len(v.Table.Gears) == 0 || !v.Table.Gears[0].PerThousand.Taken() || top <= 0 {
		return nil, nil
	}
	p := sheet("engine, rev/min", "road, mile/h")
	for i, g := range v.Table.Gears {
		speed := g.PerThousand.Value().Times(top.RevolutionsPerMinute() / 1000).MilesPerHour()
		l, err := line(plotter.XYs{{}, {X: top.RevolutionsPerMinute(), Y: speed}}, i%3, vg.Points(1.5))
		if err != nil {
			return nil, err
		}
		p.Add(l)
		if err := note(p, top.RevolutionsPerMinute()*1.01, speed*0.985, g.Name+": "+units.MilesPerHour(speed).In(units.MilePerHour, 0), false); err != nil {
			return nil, err
		}
		p.Y.Max = max(p.Y.Max, speed*1.05)
	}
	grid := plotter.NewGrid()
	grid.Vertical.Color, grid.Horizontal.Color = pale, pale
	p.Add(grid)
	p.X.Min, p.Y.Min, p.X.Max = 0, 0, top.RevolutionsPerMinute()*1.2
	last := v.Table.Gears[len(v.Table.Gears)-1]
	finding := "top gear, " + last.Name + ", gives " + last.PerThousand.Value().In(units.MilePerHour, 1) + " for each 1000 rev/min"
	return []Picture{{Name: "road-speed", Title: "Road speed in each gear", Finding: finding, plot: p, w: wide, h: tall}}, nil
}
