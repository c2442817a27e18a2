package main

import (
	"path/filepath"
	"slices"
	"testing"
)

func TestMeasure(t *testing.T) {
	found, err := measure(filepath.Join("testdata", "shop"), []string{"./..."})
	if err != nil {
		t.Fatal(err)
	}
	if len(found) != 1 || found[0].path != "shop" {
		t.Fatalf("%d packages, want the one that is no program", len(found))
	}
	want := []string{"shop.Silent", "shop.Tested", "(*shop.Bolt).Shear", "shop.Nut"}
	if got := found[0].missing(); !slices.Equal(got, want) {
		t.Errorf("missing %v, want %v", got, want)
	}
	if got, want := found[0].unnamed(), []string{"Tested"}; !slices.Equal(got, want) {
		t.Errorf("not in the map %v, want %v", got, want)
	}
	if n := len(found[0].exported); n != 11 {
		t.Errorf("%d names counted, want 11: %v", n, found[0].exported)
	}
	if report(found) {
		t.Error("passes with names missing")
	}
}
