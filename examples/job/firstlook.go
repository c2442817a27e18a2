package job

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// firstLook is what is seen and tried before any tool comes out: the things
// that stop an engine, or a rider, whatever its settings.
type firstLook struct {
	oilFeed, oilReturn string // "seen", "not seen"
	turns              string // "freely", "stiff", "stops", "seized"
	spark              string // "on compression", "on overlap", "none"
	brakes             string // "good", "poor"
	leakHeardAt        string
	dry, wet           measure.Reading[units.Pressure]   // cranking pressure above atmosphere
	fuelFlow           measure.Reading[units.VolumeFlow] // at the carburettor end of the pipe
}

func readFirstLook(s section) firstLook {
	f := firstLook{
		oilFeed:     s.choice("oil_feed", "seen", "not seen"),
		oilReturn:   s.choice("oil_return", "seen", "not seen"),
		turns:       s.choice("turns", "freely", "stiff", "stops", "seized"),
		spark:       s.choice("spark", "on compression", "on overlap", "none"),
		brakes:      s.choice("brakes", "good", "poor"),
		leakHeardAt: s.choice("leak_heard_at", "inlet", "exhaust", "crankcase", "head joint", "nowhere"),
		dry:         reading(s, "compression_dry", measure.CompressionGauge()),
		wet:         reading(s, "compression_wet", measure.CompressionGauge()),
		fuelFlow:    reading(s, "fuel_flow", measure.Nominal[units.VolumeFlow](0.1)),
	}
	s.close()
	return f
}
