package main

import (
	"strings"
	"testing"

	"example.com/benchbook/units/fault"
)

// shaft is the word that an angle turned by one must carry.
func shaft(name string) string {
	switch name {
	case "units.ParseCrankAngle":
		return " crank"
	case "units.ParseCamAngle":
		return " cam"
	}
	return ""
}

// Every unit that a refusal offers is read in some case, so that a front end has
// the factor of each.
func TestEveryUnitIsRead(t *testing.T) {
	now, err := answers()
	if err != nil {
		t.Fatal(err)
	}
	texts := map[string][]string{}
	reads := map[string]asked{}
	for _, a := range now.asked {
		if strings.HasPrefix(a.name, "units.Parse") && a.name != "units.ParsePosition" {
			reads[a.name] = a
		}
	}
	for _, c := range now.file.Cases {
		if _, refused := c.Expected["fault"]; !refused {
			texts[c.Function] = append(texts[c.Function], c.Inputs["text"].Text)
		}
	}
	if len(reads) < 25 {
		t.Fatalf("only %d quantities are read", len(reads))
	}
	for name, a := range reads {
		offered := ""
		for _, f := range fault.Faults(a.answer(row{"1 nothings" + shaft(name)}).err) {
			_, offered, _ = strings.Cut(f.Rule, "write one of ")
		}
		if offered == "" {
			t.Errorf("%s offers no units", name)
		}
		for _, unit := range strings.Split(offered, ", ") {
			found := false
			for _, text := range texts[name] {
				number, ok := strings.CutSuffix(text, unit)
				found = found || ok && strings.Trim(number, "0123456789./' \"") == "" && number != ""
			}
			if !found {
				t.Errorf("%s reads no %s in any case", name, unit)
			}
		}
	}
}
