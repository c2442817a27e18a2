package refdata

import (
	"encoding/csv"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// cells reads a table with encoding/csv, as rows of cells by column.
func cells(t *testing.T, table string) []map[string]string {
	t.Helper()
	text, err := os.ReadFile("tables/" + table + ".csv")
	if err != nil {
		t.Fatal(err)
	}
	all, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
	if err != nil {
		t.Fatalf("%s: %v", table, err)
	}
	var out []map[string]string
	for _, line := range all[1:] {
		m := map[string]string{}
		for i, c := range line {
			m[all[0][i]] = c
		}
		out = append(out, m)
	}
	return out
}

// groups are the columns that each pair of source and status columns answers for.
// A table that is not here has one pair, source and status, for all columns.
var groups = map[string]map[string][]string{
	"threads_bsw":           {"thread": {"size", "major_in", "tpi", "in_bs84_list"}, "diameters": {"depth_in", "effective_in", "minor_in"}, "area": {"stress_area_in2"}, "drill": {"tapping_drill_mm"}},
	"threads_bsf":           {"thread": {"size", "major_in", "tpi"}, "diameters": {"depth_in", "effective_in", "minor_in"}, "area": {"stress_area_in2"}, "drill": {"tapping_drill_mm"}},
	"threads_cycle":         {"thread": {"size", "major_in", "tpi", "series", "included_angle_deg"}, "diameters": {"depth_in", "radius_in", "effective_in", "minor_in"}, "area": {"stress_area_in2"}, "minor_printed": {"minor_printed_in"}},
	"threads_ba":            {"thread": {"size", "major_mm", "pitch_mm", "tpi_approx"}, "diameters": {"depth_mm", "radius_mm", "effective_mm", "minor_mm"}, "area": {"stress_area_mm2"}, "core_hole": {"core_hole_in"}},
	"threads_bspp":          {"thread": {"size", "major_mm", "tpi", "pitch_mm"}, "diameters": {"depth_mm", "effective_mm", "minor_mm", "minor_int_tol_plus_mm"}},
	"threads_metric_coarse": {"thread": {"designation", "major_mm", "pitch_mm"}, "diameters": {"effective_mm", "minor_int_mm", "minor_ext_mm"}, "area": {"stress_area_mm2"}, "drill": {"tapping_drill_mm"}},
	"threads_metric_fine":   {"thread": {"designation", "major_mm", "pitch_mm"}, "diameters": {"effective_mm", "minor_int_mm", "minor_ext_mm"}, "area": {"stress_area_mm2"}},
	"threads_unc":           {"thread": {"size", "major_in", "tpi"}, "diameters": {"effective_in", "minor_ext_in", "minor_int_in"}, "area": {"stress_area_in2"}},
	"threads_unf":           {"thread": {"size", "major_in", "tpi"}, "diameters": {"effective_in", "minor_ext_in", "minor_int_in"}, "area": {"stress_area_in2"}},
	"threads_brass":         {"thread": {"size", "series", "major_in", "tpi", "included_angle_deg"}, "diameters": {"effective_in", "minor_in"}, "area": {"stress_area_in2"}},
	"threads_spoke":         {"thread": {"size", "series", "major_in", "tpi", "included_angle_deg"}, "diameters": {"effective_in", "minor_in"}, "area": {"stress_area_in2"}},
	"hex_whitworth":         {"small": {"small_max_in", "small_min_in", "small_corners_max_in", "head_thickness_max_in", "nut_thickness_max_in"}, "large": {"size", "large_in"}, "large_4place": {"large_4place_in"}},
	"spanners_whitworth":    {"width": {"marking_w", "across_flats_in"}, "pairing": {"marking_bs"}},
	"hex_unified":           {"bolt": {"size", "bolt_max_in", "bolt_min_in", "bolt_corners_max_in", "head_max_in"}, "nut": {"nut_max_in", "nut_min_in", "nut_corners_max_in", "nut_thickness_max_in"}},
	"hex_ba":                {"rule": {"size", "across_flats_mm"}, "bs57": {"bs57_in"}},
	"hex_metric":            {"iso272": {"designation", "iso272_mm"}, "old": {"old_din_mm"}},
	"property_classes":      {"strength": {"class", "d_over_mm", "d_to_mm", "tensile_nominal_mpa", "tensile_min_mpa", "yield_nominal_mpa", "yield_min_mpa"}, "proof": {"proof_mpa"}},
	"spring_moduli":         {"moduli": {"material", "wire_from_mm", "wire_to_mm", "e_gpa", "g_gpa"}, "limits": {"tension_limit_low_pct", "tension_limit_high_pct", "torsion_limit_low_pct", "torsion_limit_high_pct"}},
	"spring_strength":       {"fit": {"material", "fit", "law", "a_mpa", "m"}, "range": {"wire_from_mm", "wire_to_mm"}},
	"disc_springs":          {"size": {"series", "de_mm", "di_mm", "t_mm", "h0_mm", "l0_mm", "load_at_75_pct_n"}, "computed": {"computed_load_n", "computed_sigma_ii_mpa", "computed_sigma_iii_mpa", "computed_sigma_om_mpa"}},
	"roller_chain":          {"size": {"number", "list", "imperial_name", "pitch_mm", "inner_width_mm", "roller_mm", "mass_kg_m"}, "pin": {"pin_mm", "plate_height_mm"}, "strength": {"strength_kn"}},
	"tyres":                 {"code": {"code", "kind", "width_mm", "aspect", "rim_in"}, "computed": {"computed_diameter_mm", "computed_rolling_mm"}},
	"standard_atmosphere":   {"printed": {"printed_p_pa", "printed_a_m_s"}, "computed": {"geopotential_m", "computed_t_k", "computed_p_pa", "computed_rho_kg_m3", "computed_a_m_s", "computed_mu_pa_s"}},
	"moist_air":             {"printed": {"printed_rho_kg_m3"}, "computed": {"t_c", "p_pa", "humidity_pct", "computed_rho_kg_m3"}},
	"jet_drills":            {"size": {"number", "diameter_in"}, "flow": {"computed_flow_half_metre_cc_min", "computed_flow_one_metre_cc_min"}},
	"fuels": {
		"composition": {"c_mass", "h_mass", "o_mass"}, "density": {"density_low_kg_m3", "density_high_kg_m3", "density_t_c"}, "printed_afr": {"printed_afr_low", "printed_afr_high"},
		"computed_afr": {"fuel", "formula", "computed_afr"}, "latent": {"latent_low_kj_kg", "latent_high_kj_kg"}, "lhv": {"lhv_low_mj_kg", "lhv_high_mj_kg"},
		"viscosity": {"viscosity_low_mm2_s", "viscosity_high_mm2_s", "viscosity_t_c"}, "flash": {"flash_low_c", "flash_high_c", "flammable_low_pct", "flammable_high_pct"},
	},
}

// Every figure of every table has a source that is listed and a status that
// exists; a group of columns without figures claims neither.
func TestNoFigureWithoutSourceAndStatus(t *testing.T) {
	known := map[string]bool{}
	for _, row := range cells(t, "sources") {
		if known[row["key"]] {
			t.Errorf("source %s stands twice", row["key"])
		}
		known[row["key"]] = true
		if row["title"] == "" {
			t.Errorf("source %s has no title", row["key"])
		}
	}
	used := map[string]bool{}
	for _, table := range every() {
		rows := cells(t, table.Name())
		if len(rows) != table.Len() {
			t.Errorf("%s: %d rows served of %d", table.Name(), table.Len(), len(rows))
		}
		plan := groups[table.Name()]
		covered := map[string]bool{"note": true}
		if plan == nil {
			var all []string
			for c := range rows[0] {
				if c != "source" && c != "status" && c != "note" {
					all = append(all, c)
				}
			}
			plan = map[string][]string{"": all}
		}
		for i, row := range rows {
			for group, columns := range plan {
				source, status := "source", "status"
				if group != "" {
					source, status = "source_"+group, "status_"+group
				}
				covered[source], covered[status] = true, true
				figures := false
				for _, c := range columns {
					if _, ok := row[c]; !ok {
						t.Fatalf("%s has no column %s", table.Name(), c)
					}
					covered[c] = true
					figures = figures || row[c] != ""
				}
				if figures != (row[source] != "") || figures != (row[status] != "") {
					t.Errorf("%s row %d, %s: figures %v, source %q, status %q", table.Name(), i+1, group, figures, row[source], row[status])
				}
				if figures && statusNamed(row[status]) == 0 {
					t.Errorf("%s row %d: no such status as %q", table.Name(), i+1, row[status])
				}
				if figures {
					for _, k := range strings.Split(row[source], "+") {
						if used[k] = true; !known[k] {
							t.Errorf("%s row %d: no such source as %q", table.Name(), i+1, k)
						}
					}
				}
			}
		}
		for c := range rows[0] {
			if !covered[c] {
				t.Errorf("%s: no source answers for column %s", table.Name(), c)
			}
		}
	}
	for k := range known {
		if !used[k] {
			t.Errorf("source %s is not used", k)
		}
	}
}

// What is served has its sources too, through the typed rows.
func TestServedRowsHaveSources(t *testing.T) {
	n := 0
	for _, info := range Tables() {
		n += info.Rows
		if len(info.Sources) == 0 || info.Title == "" || info.Version == "" || len(info.SHA256) != 64 {
			t.Errorf("%s: %+v", info.Name, info)
		}
		for _, s := range info.Sources {
			if s.Title == "" || s.Status == 0 {
				t.Errorf("%s: %v", info.Name, s)
			}
		}
	}
	t.Logf("%d tables, %d rows, %d disagreements, %d things left out", len(Tables()), n, len(Disagreements()), len(LeftOut()))
	if entries := cells(t, "register"); len(entries) != len(every())+1 { // and the row of all
		t.Errorf("the register has %d tables, %d are served", len(entries), len(every()))
	}
	files, err := os.ReadDir("tables")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		name := strings.TrimSuffix(f.Name(), ".csv")
		if _, ok := register()[name]; !ok && !slices.Contains([]string{"sources", "register", "disagreements", "left_out"}, name) {
			t.Errorf("%s is in no register", f.Name())
		}
	}
}

// The tables hold at least 338 thread rows of nine systems and 683
// rows of threads, hexagons, drills, gauges, classes and grades.
func TestRowCounts(t *testing.T) {
	nine := 0
	for _, s := range Systems() {
		if s != Brass && s != Spoke {
			nine += ThreadsOf(s).Len()
		}
	}
	if nine < 338 {
		t.Errorf("%d thread rows of the nine systems, want 338", nine)
	}
	all := nine + WhitworthHexagons().Len() + WhitworthSpanners().Len() + UnifiedHexagons().Len() + BAHexagons().Len() + MetricHexagons().Len() +
		NumberDrills().Len() + LetterDrills().Len() + MetricDrills().Len() + WireGauge().Len() + PropertyClasses().Len() + Grades().Len()
	if all < 683 {
		t.Errorf("%d fastener rows, want 683", all)
	}
}

// No table names a host: where a figure was read is said in words.
func TestNoHostNames(t *testing.T) {
	host := regexp.MustCompile(`(?i)https?:|www\.|[a-z0-9-]\.(com|org|net|co|uk|info|edu|ru|fr|pl|app|xyz)\b`)
	files, err := os.ReadDir("tables")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		text, err := os.ReadFile("tables/" + f.Name())
		if err != nil {
			t.Fatal(err)
		}
		if at := host.FindString(string(text)); at != "" {
			t.Errorf("%s holds %q", f.Name(), at)
		}
	}
}

// Columns that rise or fall down the table, checked in the text.
func TestMonotonicColumns(t *testing.T) {
	value := func(s string) float64 {
		l, err := parseInches(s)
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	for _, c := range []struct {
		table, column string
		falling       bool
		strict        bool
		within        string // only between rows equal in this column
	}{
		{"threads_bsw", "major_in", false, true, ""}, {"threads_bsw", "tpi", true, false, ""}, {"threads_bsw", "minor_in", false, true, ""}, {"threads_bsw", "stress_area_in2", false, true, ""}, {"threads_bsw", "tapping_drill_mm", false, true, ""},
		{"threads_bsf", "major_in", false, true, ""}, {"threads_bsf", "tpi", true, false, ""}, {"threads_bsf", "minor_in", false, true, ""}, {"threads_bsf", "stress_area_in2", false, true, ""}, {"threads_bsf", "tapping_drill_mm", false, true, ""},
		{"threads_cycle", "major_in", false, true, "series"}, {"threads_cycle", "tpi", true, false, "series"}, {"threads_cycle", "minor_in", false, true, "series"},
		{"threads_ba", "major_mm", true, true, ""}, {"threads_ba", "pitch_mm", true, true, ""}, {"threads_ba", "minor_mm", true, true, ""}, {"threads_ba", "depth_mm", true, true, ""},
		{"threads_bspp", "major_mm", false, true, ""}, {"threads_bspp", "tpi", true, false, ""}, {"threads_bspp", "minor_mm", false, true, ""},
		{"threads_metric_coarse", "major_mm", false, true, ""}, {"threads_metric_coarse", "pitch_mm", false, false, ""}, {"threads_metric_coarse", "stress_area_mm2", false, true, ""}, {"threads_metric_coarse", "tapping_drill_mm", false, true, ""},
		{"threads_metric_fine", "major_mm", false, false, ""}, {"threads_metric_fine", "pitch_mm", false, true, "major_mm"},
		{"threads_unc", "major_in", false, true, ""}, {"threads_unc", "tpi", true, false, ""}, {"threads_unc", "stress_area_in2", false, true, ""},
		{"threads_unf", "major_in", false, true, ""}, {"threads_unf", "tpi", true, false, ""}, {"threads_unf", "stress_area_in2", false, true, ""},
		{"threads_brass", "major_in", false, true, ""}, {"threads_spoke", "major_in", false, true, ""}, {"threads_spoke", "tpi", true, false, ""},
		{"hex_whitworth", "size", false, true, ""}, {"hex_whitworth", "large_in", false, true, ""}, {"hex_whitworth", "small_max_in", false, true, ""}, {"hex_whitworth", "nut_thickness_max_in", false, true, ""},
		{"spanners_whitworth", "across_flats_in", false, true, ""}, {"hex_unified", "bolt_max_in", false, true, ""}, {"hex_unified", "nut_max_in", false, true, ""}, {"hex_ba", "across_flats_mm", true, true, ""},
		{"hex_metric", "iso272_mm", false, true, ""}, {"hex_metric", "old_din_mm", false, true, ""},
		{"drills_number", "diameter_in", true, true, ""}, {"drills_letter", "diameter_in", false, true, ""}, {"drills_iso2306", "tapping_drill_mm", false, true, ""}, {"wire_swg", "diameter_in", true, true, ""}, {"jet_drills", "diameter_in", true, true, ""},
		{"property_classes", "tensile_min_mpa", false, false, ""},
		{"disc_springs", "de_mm", false, true, "series"}, {"roller_chain", "pitch_mm", false, false, "list"},
		{"standard_atmosphere", "geopotential_m", false, true, ""}, {"standard_atmosphere", "computed_p_pa", true, true, ""}, {"standard_atmosphere", "computed_t_k", true, true, ""},
		{"lambda_co", "computed_co_dry_pct", true, false, ""}, {"lambda_co", "computed_o2_dry_pct", false, false, ""}, {"slide_cutaway", "computed_mm", false, true, ""},
		{"starting_points", "displacement_cc", false, true, ""}, {"throttle_influence", "lift_from", false, true, ""}, {"dial_gauges", "full_range_um", false, false, ""}, {"gear_modules", "module_mm", false, true, "series"},
	} {
		last := map[string]float64{}
		for i, row := range cells(t, c.table) {
			if row[c.column] == "" {
				continue
			}
			x := value(row[c.column])
			before, ok := last[row[c.within]]
			last[row[c.within]] = x
			if !ok {
				continue
			}
			if c.falling {
				x, before = -x, -before
			}
			if x < before || c.strict && x == before {
				t.Errorf("%s row %d: %s is out of order", c.table, i+1, c.column)
			}
		}
	}
}
