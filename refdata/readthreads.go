package refdata

import (
	"strings"

	"example.com/benchbook/units"
)

// readThreads reads one system's table.
func readThreads(table string, system System, included float64, text string) *Table[Thread, units.Length] {
	s := scan(text)
	size, series, note := s.column("size"), s.column("series"), s.column("note")
	if size < 0 {
		size = s.must("designation")
	}
	major, pitch, tpi, angle := s.lengthColumn("major"), s.lengthColumn("pitch"), s.column("tpi"), s.column("included_angle_deg")
	effective, minor, minorExt, minorInt := s.lengthColumn("effective"), s.lengthColumn("minor"), s.lengthColumn("minor_ext"), s.lengthColumn("minor_int")
	if minorExt.at >= 0 {
		minor = minorExt
	} else {
		minorInt = minor
	}
	areaIn, areaMm, listed := s.column("stress_area_in2"), s.column("stress_area_mm2"), s.column("in_bs84_list")
	drill, printed, plus, radius := s.lengthColumn("tapping_drill"), s.lengthColumn("minor_printed"), s.lengthColumn("minor_int_tol_plus"), s.lengthColumn("radius")
	oThread, oDiameters, oArea := s.originColumns("thread"), s.originColumns("diameters"), s.originColumns("area")
	oDrill, oPrinted := s.originColumns("drill"), s.originColumns("minor_printed")

	rows := make([]Thread, 0, strings.Count(s.rest, "\n")+1)
	for s.next() {
		t := Thread{
			System: system, Size: s.text(size), Series: s.text(series), Note: s.text(note),
			Major: s.needLength(major), Included: units.Degrees(included),
			Effective: s.needLength(effective), Minor: s.needLength(minor), MinorInternal: s.needLength(minorInt),
			TappingDrill: s.length(drill), MinorPrinted: s.length(printed), NutMinorPlus: s.length(plus), Radius: s.length(radius),
			ThreadOrigin: s.origin(oThread), DiameterOrigin: s.origin(oDiameters), AreaOrigin: s.origin(oArea),
			DrillOrigin: s.origin(oDrill), PrintedOrigin: s.origin(oPrinted),
		}
		if n, ok := s.number(tpi); ok {
			t.ThreadsPerInch, t.Pitch = n, units.Inches(1/n)
		} else {
			t.Pitch = s.needLength(pitch)
			t.ThreadsPerInch = 25.4 / t.Pitch.Millimetres()
		}
		if a, ok := s.number(angle); ok {
			t.Included = units.Degrees(a)
		}
		if a, ok := s.number(areaIn); ok {
			t.StressArea = Known(units.SquareInches(a))
		} else if a, ok := s.number(areaMm); ok {
			t.StressArea = Known(units.SquareMillimetres(a))
		}
		if listed >= 0 {
			t.Series = "BS 84 list"
			if s.text(listed) != "yes" {
				t.Series = "older or trade size"
			}
		}
		t.Name = nameThread(&t)
		rows = append(rows, t)
	}
	return newTable(table, rows, s.err(), threadNames, threadName, threadMajor)
}
