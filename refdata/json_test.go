package refdata

import (
	"encoding/json"
	"testing"
)

// Every table goes out as JSON with all its rows, every quantity in the one form.
func TestTablesAsJSON(t *testing.T) {
	for _, table := range every() {
		text, err := json.Marshal(table)
		if err != nil {
			t.Errorf("%s: %v", table.Name(), err)
			continue
		}
		var back struct {
			Name, Title, Version, SHA256 string
			Rows                         []map[string]any
		}
		if err := json.Unmarshal(text, &back); err != nil {
			t.Errorf("%s: %v", table.Name(), err)
		}
		if back.Name != table.Name() || len(back.Rows) != table.Len() || back.SHA256 != register()[table.Name()].sha256 || back.Title == "" {
			t.Errorf("%s: %d rows of %d", back.Name, len(back.Rows), table.Len())
		}
		for _, row := range back.Rows {
			checkJSON(t, table.Name(), row)
		}
	}
}

// checkJSON sees that objects with a value have text and unit too.
func checkJSON(t *testing.T, at string, v any) {
	t.Helper()
	switch v := v.(type) {
	case map[string]any:
		if _, ok := v["value"]; ok {
			_, text := v["text"].(string)
			_, unit := v["unit"].(string)
			if !text || !unit {
				t.Errorf("%s: %v", at, v)
			}
		}
		for k, e := range v {
			checkJSON(t, at+"."+k, e)
		}
	case []any:
		for _, e := range v {
			checkJSON(t, at, e)
		}
	}
}

func TestStatusText(t *testing.T) {
	for s := Status(0); s <= FromMemory; s++ {
		text, err := s.MarshalText()
		var back Status
		if err != nil || back.UnmarshalText(text) != nil || back != s {
			t.Errorf("%v comes back as %v, %v", s, back, err)
		}
	}
	var s Status
	if s.UnmarshalText([]byte("hearsay")) == nil {
		t.Error("hearsay is a status")
	}
}
