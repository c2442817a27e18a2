package main

import (
	"testing"

	"golang.org/x/tools/go/analysis/analysistest"
)

func TestTrade(t *testing.T) {
	analysistest.Run(t, analysistest.TestData(), analyzer, "example.com/benchbook/trade", "example.com/benchbook/units/fastener")
}

// TestExempt shows that units and its readings may touch the numbers.
func TestExempt(t *testing.T) {
	analysistest.Run(t, analysistest.TestData(), analyzer, "example.com/benchbook/units", "example.com/benchbook/units/measure")
}

func TestDocumented(t *testing.T) {
	analysistest.Run(t, analysistest.TestData(), documented, "documented", "bare")
}

func TestFloors(t *testing.T) {
	analysistest.Run(t, analysistest.TestData(), floors, "example.com/benchbook/timing/crank", "example.com/benchbook/timing", "example.com/benchbook/util")
}
