package checks_test

import (
	"math"

	"example.com/benchbook/carburation"
	"example.com/benchbook/carburation/air"
	"example.com/benchbook/carburation/fuel"
	"example.com/benchbook/units"
)

// dry is the density of air as an ideal gas of the case's constant, which is
// how these books make it.
func dry(p units.Pressure, t units.Temperature, constant float64) units.Density {
	return units.KilogramsPerCubicMetre(p.Pascals() / (constant * t.Kelvins()))
}

func specific(r *run, name string) units.Density {
	return units.GramsPerCubicCentimetre(r.num(name))
}

// swept is all cylinders of the case.
func swept(r *run) units.Volume {
	return units.CubicMetres(piston(r) * get[units.Length](r, "stroke").Metres() * r.num("cylinders"))
}

// chokeAndJet runs the usual textbook pair: a choke for a flow at a real air
// speed with a coefficient on velocity, and a jet at a share of its suction.
func chokeAndJet(g carburation.Gas, speed, throat string) runner {
	return func(r *run) {
		c := carburation.Choke{Coefficient: get[units.Ratio](r, either(r, "Cv", "Cv_air")), Pressure: get[units.Pressure](r, either(r, "p1", "p")), Temperature: get[units.Temperature](r, either(r, "T1", "T")), Gas: g}
		s, err := c.Size(get[units.MassFlow](r, "m_air"), get[units.Speed](r, speed), carburation.OnVelocity)
		r.ok(err)
		want(r, throat, s.Diameter)
		if _, ok := r.Expected["p2"]; ok {
			want(r, "p2", s.Throat.Pressure)
		}
		if _, ok := r.Expected["d_jet"]; ok {
			o := carburation.Orifice{Coefficient: get[units.Ratio](r, "Cd_fuel")}
			a, err := o.Size(get[units.MassFlow](r, "m_fuel"), s.Throat.Suction.Times(r.num("dp_fuel_over_dp_air")), get[units.Density](r, "rho_fuel"))
			r.ok(err)
			want(r, "d_jet", roundHole(r, a))
		}
	}
}

func roundHole(r *run, a units.Area) units.Length {
	r.t.Helper()
	d, err := carburation.CircleDiameter(a)
	r.ok(err)
	return d
}

func either(r *run, names ...string) string {
	for _, n := range names {
		if _, ok := r.Inputs[n]; ok {
			return n
		}
	}
	return names[0]
}

// suction runs the depression that an engine's air makes in a choke.
func suctionOfEngine(answer string) runner {
	return func(r *run) {
		d, err := carburation.Intake{Swept: swept(r), Speed: get[units.RotationalSpeed](r, "N"), Efficiency: get[units.Ratio](r, "eta_v"), Air: get[units.Density](r, "rho_air")}.Flow()
		r.ok(err)
		p, err := carburation.Suction(d.Air, get[units.Density](r, "rho_air"), carburation.CircleArea(get[units.Length](r, "d_throat")), get[units.Ratio](r, "Cd_air"))
		r.ok(err)
		if r.Expected[answer].Unit == "kgf/m²" {
			r.numbers(answer, p.Pascals()/9.81) // at the book's gravity
			return
		}
		want(r, answer, p)
	}
}

// altitude runs the textbook law of height.
func altitude(p0, t0 string, scale units.Length) runner {
	return func(r *run) {
		t := get[units.Temperature](r, t0)
		if r.Inputs[t0].Unit == "°C" {
			t = units.Kelvins(r.num(t0) + 273) // these books count from -273 °C
		}
		law := air.LogLaw{Temperature: t, Scale: scale, LapseKPerMetre: r.num("lapse")}
		_, density, err := law.At(get[units.Length](r, "h"))
		r.ok(err)
		r.numbers("AFR_altitude", r.num(p0)*math.Sqrt(density))
	}
}

// cleaner runs the effect of a drop before the choke.
func cleaner(mercury func(r *run) units.Pressure) runner {
	return func(r *run) {
		drop := mercury(r)
		throat := get[units.Pressure](r, "p_throat")
		want(r, "p_throat_with", throat-drop)
		m, err := carburation.CleanerMixture(get[units.Ratio](r, "AFR"), get[units.Pressure](r, "p1")-throat, drop)
		r.ok(err)
		want(r, "AFR_with", m)
	}
}

// roundedMercury is a column at the book's rounded 750 mm of mercury a bar.
func roundedMercury(r *run) units.Pressure {
	return units.Bars(r.num("dp_cleaner") / r.num("mmhg_per_bar"))
}

// plainJet reads choke and jet of a case.
func plainJet(r *run) carburation.PlainJet {
	p := carburation.PlainJet{
		ChokeArea: carburation.CircleArea(get[units.Length](r, "d_throat")), ChokeCoefficient: get[units.Ratio](r, "Cd_air"),
		Jet: carburation.Orifice{Area: carburation.CircleArea(get[units.Length](r, "d_jet")), Coefficient: get[units.Ratio](r, "Cd_fuel"), Gravity: units.MetresPerSecondSquared(gravity(r))},
		Air: get[units.Density](r, "rho_air"), Fuel: get[units.Density](r, "rho_fuel"),
	}
	return p
}

// gravity is what the case gives, or the 9.81 m/s² these books take.
func gravity(r *run) float64 {
	if _, ok := r.Inputs["g"]; ok {
		return r.num("g")
	}
	return 9.81
}

// withLip runs mixture with and without the lip, and where flow begins.
func withLip(r *run) {
	p := plainJet(r)
	dp := get[units.Pressure](r, "dp")
	m, err := p.Mixture(dp)
	r.ok(err)
	want(r, "AFR_no_lip", m)
	p.Jet.Lip = get[units.Length](r, "z")
	m, err = p.Mixture(dp)
	r.ok(err)
	want(r, "AFR_lip", m)
	v, err := p.Jet.StartingSpeed(p.Fuel, p.Air, 1)
	r.ok(err)
	want(r, "c_min", v)
}

var carburationRunners = map[string]runner{
	"gupta-9-1":       chokeAndJet(carburation.Gas{RJoulesPerKilogramKelvin: 287, Gamma: 1.4, CpJoulesPerKilogramKelvin: 1005}, "c2", "d_throat"),
	"mathur-11-1":     chokeAndJet(carburation.Gas{RJoulesPerKilogramKelvin: 287, Gamma: 1.4, CpJoulesPerKilogramKelvin: 1005}, "c2", "d_throat"),
	"mathur-11-2":     chokeAndJet(carburation.Gas{RJoulesPerKilogramKelvin: 287, Gamma: 1.4, CpJoulesPerKilogramKelvin: 1005}, "c2", "d_throat"),
	"rajput-11-6":     chokeAndJet(carburation.Gas{RJoulesPerKilogramKelvin: 287, Gamma: 1.4}, "c2", "d_throat"),
	"ramalingam-7-13": chokeAndJet(carburation.Gas{RJoulesPerKilogramKelvin: 281, Gamma: 1.35, CpJoulesPerKilogramKelvin: 1005}, "c2", "d_throat"),
	"keswani-9-15":    chokeAndJet(carburation.Gas{RJoulesPerKilogramKelvin: 287, Gamma: 1.4, CpJoulesPerKilogramKelvin: 1005}, "c2", "d_choke"),
	"mathur-11-3":     suctionOfEngine("suction"),
	"rajput-11-1":     suctionOfEngine("suction"),
	"keswani-9-4":     suctionOfEngine("depression"),
	"gupta-9-8":       cleaner(roundedMercury),
	"mathur-11-9":     cleaner(roundedMercury),
	"rajput-11-5": cleaner(func(r *run) units.Pressure {
		return units.Pascals(r.num("rho_Hg") * 9.81 * r.num("dp_cleaner") / 1e3)
	}),
	"gupta-9-7":    altitude("AFR_sea", "t_sea", units.Metres(19200)),
	"mathur-11-7":  altitude("AFR_sea", "T_sea", units.Metres(19200)),
	"rajput-11-11": altitude("AFR_sea", "t_sea", units.Metres(19300)),
	"mathur-11-8":  withLip,
	"rajput-11-9":  withLip,
	"keswani-9-2": func(r *run) {
		m, err := plainJet(r).Mixture(units.Kilopascals(5)) // without a lip the suction falls out
		r.ok(err)
		want(r, "AFR", m)
	},
	"gupta-9-4": func(r *run) {
		rho := dry(get[units.Pressure](r, "p1"), get[units.Temperature](r, "T1"), 287)
		d, err := carburation.Intake{Swept: swept(r), Speed: get[units.RotationalSpeed](r, "N"), Efficiency: get[units.Ratio](r, "eta_v"), Air: rho}.Flow()
		r.ok(err)
		p, err := carburation.Suction(d.Air, rho, carburation.CircleArea(get[units.Length](r, "d_throat")), get[units.Ratio](r, "Cd_air"))
		r.ok(err)
		want(r, "depression", p)
		o := carburation.Orifice{Coefficient: get[units.Ratio](r, "Cd_fuel"), Lip: get[units.Length](r, "z")}
		a, err := o.Size(d.Air.Times(1/r.num("AFR")), p, get[units.Density](r, "rho_fuel"))
		r.ok(err)
		want(r, "d_jet", roundHole(r, a))
	},
	"gupta-9-3": func(r *run) {
		p, t := get[units.Pressure](r, "p1"), get[units.Temperature](r, "T1")
		conv := fuel.Convention{WholeMasses: true, OxygenByMass: get[units.Ratio](r, "o2_in_air")}
		f, err := fuel.Composition{Carbon: get[units.Ratio](r, "C"), Hydrogen: get[units.Ratio](r, "H")}.Formula(conv)
		r.ok(err)
		s, err := fuel.Stoichiometric(f, conv)
		r.ok(err)
		afr := s.AFR.Times(r.num("air_over_theoretical"))
		rho := dry(p, t, r.num("R_air"))
		d, err := carburation.Intake{Swept: swept(r), Speed: get[units.RotationalSpeed](r, "N"), Efficiency: get[units.Ratio](r, "eta_v"), Air: rho, Vapour: dry(p, t, r.num("R_fuel_vapour")), Mixture: afr}.Flow()
		r.ok(err)
		want(r, "m_fuel", d.Fuel)
		c := carburation.Choke{Area: carburation.CircleArea(units.Millimetres(24.75)), Coefficient: units.Value(1), Pressure: p, Temperature: t,
			Gas: carburation.Gas{RJoulesPerKilogramKelvin: r.num("R_air"), Gamma: 1 / (1 - 0.286), CpJoulesPerKilogramKelvin: 1005}} // the book rounds (gamma-1)/gamma to 0.286
		at, err := c.At(p - get[units.Pressure](r, "dp"))
		r.ok(err)
		want(r, "c2", at.Speed)
		r.leave("24.741 mm by the same steps: the book rounds on the way", "d_throat")
	},
	"gupta-9-5": func(r *run) {
		o := carburation.Orifice{Area: carburation.CircleArea(get[units.Length](r, "d_jet")), Coefficient: get[units.Ratio](r, "Cd_fuel"), Lip: get[units.Length](r, "z"), Gravity: units.MetresPerSecondSquared(9.81)}
		rho := dry(get[units.Pressure](r, "p1"), get[units.Temperature](r, "T1"), 287)
		liquid := get[units.Density](r, "rho_fuel")
		m := get[units.MassFlow](r, "m_fuel")
		v, err := o.StartingSpeed(liquid, rho, get[units.Ratio](r, "Cd_air"))
		r.ok(err)
		want(r, "c_critical", v)
		p, err := o.Suction(m, liquid)
		r.ok(err)
		r.numbers("depression", p.Pascals()/9.81) // millimetres of water at the book's gravity
		a, err := carburation.ChokeArea(m.Times(r.num("AFR")), rho, p, get[units.Ratio](r, "Cd_air"))
		r.ok(err)
		want(r, "d_throat", roundHole(r, a))
	},
	"mathur-11-4": jetOfEngineFuel("z", func(r *run) float64 { return r.num("g") }),
	"rajput-11-3": jetOfEngineFuel("z", func(r *run) float64 { return 9.81 }),
	"rajput-11-2": func(r *run) {
		o := carburation.Orifice{Area: get[units.Area](r, "A_jet"), Coefficient: get[units.Ratio](r, "Cd_fuel"), Lip: get[units.Length](r, "z"), Gravity: units.MetresPerSecondSquared(9.81)}
		m := get[units.MassFlow](r, "m_fuel")
		p, err := o.Suction(m, specific(r, "sg"))
		r.ok(err)
		want(r, "suction", p)
		a, err := carburation.ChokeArea(m.Times(r.num("AFR")), get[units.Density](r, "rho_air"), p, get[units.Ratio](r, "Cd_air"))
		r.ok(err)
		want(r, "A_throat", a)
	},
	"rajput-11-8": func(r *run) {
		p, t := get[units.Pressure](r, "p1"), get[units.Temperature](r, "T1")
		rho := dry(p, t, 287)
		d, err := carburation.Intake{Swept: get[units.Volume](r, "V_swept"), Speed: get[units.RotationalSpeed](r, "N"), Efficiency: get[units.Ratio](r, "eta_v"), Air: rho}.Flow()
		r.ok(err)
		c := carburation.Choke{Coefficient: get[units.Ratio](r, "Cd_air"), Pressure: p, Temperature: t, Gas: carburation.Gas{RJoulesPerKilogramKelvin: 287, Gamma: 1.4}}
		s, err := c.Size(d.Air, get[units.Speed](r, "c2"), carburation.OnArea)
		r.ok(err)
		choke, err := carburation.ChokeDiameter(s.Area, r.num("d_tube_over_d_choke"))
		r.ok(err)
		want(r, "d_choke", choke)
		o := carburation.Orifice{Coefficient: get[units.Ratio](r, "Cd_fuel"), Lip: get[units.Length](r, "z"), Gravity: units.MetresPerSecondSquared(9.81)}
		a, err := o.Size(d.Air.Times(1/r.num("AFR")), s.Throat.Suction, specific(r, "sg"))
		r.ok(err)
		want(r, "d_jet", roundHole(r, a))
	},
	"keswani-9-1": func(r *run) {
		o := carburation.Orifice{Area: carburation.CircleArea(get[units.Length](r, "d_jet")), Coefficient: get[units.Ratio](r, "Cd")}
		m, err := o.Flow(get[units.Pressure](r, "depression"), specific(r, "sg"))
		r.ok(err)
		want(r, "m_fuel", m)
	},
	"keswani-9-5": func(r *run) {
		rho := get[units.Density](r, "rho_air")
		d, err := carburation.Intake{Swept: swept(r), Speed: get[units.RotationalSpeed](r, "N"), Efficiency: get[units.Ratio](r, "eta_v"), Air: rho}.Flow()
		r.ok(err)
		o := carburation.Orifice{Coefficient: get[units.Ratio](r, "Cd_fuel")}
		a, err := o.Size(d.Air.Times(1/r.num("AFR")), get[units.Pressure](r, "depression"), get[units.Density](r, "rho_fuel"))
		r.ok(err)
		want(r, "d_jet", roundHole(r, a))
	},
	"keswani-9-6": func(r *run) {
		// The inputs give no temperature outside; both printed figures come out
		// at 0 °C and at none near the throat's, so 0 °C is inferred. The speed is
		// that of the air alone at the density of the throat.
		p, zero := get[units.Pressure](r, "p_atm"), units.Celsius(0)
		conv := fuel.Convention{WholeMasses: true, OxygenByMass: units.Value(0.23)} // the book's; not among its inputs
		f, err := fuel.Composition{Carbon: get[units.Ratio](r, "C"), Hydrogen: get[units.Ratio](r, "H")}.Formula(conv)
		r.ok(err)
		s, err := fuel.Stoichiometric(f, conv)
		r.ok(err)
		perKilogram := units.StandardGravity.SI() // kgf m to J
		air, vapour := r.num("R_air")*perKilogram, r.num("R_fuel")*perKilogram
		d, err := carburation.Intake{Swept: swept(r), Speed: get[units.RotationalSpeed](r, "N"), Efficiency: get[units.Ratio](r, "eta_v"),
			Air: dry(p, zero, air), Vapour: dry(p, zero, vapour), Mixture: s.AFR}.Flow()
		r.ok(err)
		want(r, "m_fuel", d.Fuel)
		v, err := carburation.AirSpeed(d.Air, dry(get[units.Pressure](r, "p_throat"), get[units.Temperature](r, "T_throat"), air), carburation.CircleArea(get[units.Length](r, "d_throat")))
		r.ok(err)
		want(r, "c2", v)
	},
	"keswani-9-9": func(r *run) {
		v, err := carburation.Orifice{Area: units.SquareMillimetres(1), Coefficient: units.Value(1), Lip: get[units.Length](r, "z")}.StartingSpeed(get[units.Density](r, "rho_fuel"), get[units.Density](r, "rho_air"), 1)
		r.ok(err)
		want(r, "c_min", v)
	},
	"keswani-9-10": func(r *run) {
		p, err := carburation.SuctionAtSpeed(get[units.Speed](r, "c_air"), get[units.Density](r, "rho_air"), get[units.Ratio](r, "Cd_air"))
		r.ok(err)
		r.numbers("depression", p.Pascals()/9.81)
		o := carburation.Orifice{Area: get[units.Area](r, "A_nozzle"), Coefficient: get[units.Ratio](r, "Cd_nozzle"), Lip: get[units.Length](r, "z"), Gravity: units.MetresPerSecondSquared(9.81)}
		m, err := o.Flow(p, get[units.Density](r, "rho_fuel"))
		r.ok(err)
		want(r, "m_fuel", m)
	},
	"keswani-9-13": func(r *run) {
		d := get[units.Length](r, "d_jet").Millimetres()
		hole := units.SquareMillimetres(3.14 / 4 * d * d) // the book's pi
		o := carburation.Orifice{Area: hole, Coefficient: get[units.Ratio](r, "Cd_fuel"), Lip: get[units.Length](r, "z"), Gravity: units.MetresPerSecondSquared(9.81)}
		rho := dry(get[units.Pressure](r, "p_atm"), get[units.Temperature](r, "T"), 29.27*9.80665)
		m := get[units.MassFlow](r, "m_fuel")
		v, err := o.StartingSpeed(specific(r, "sg"), rho, get[units.Ratio](r, "Cd_air"))
		r.ok(err)
		want(r, "c_critical", v)
		p, err := o.Suction(m, specific(r, "sg"))
		r.ok(err)
		r.numbers("drop", p.Pascals()/98.1) // centimetres of water at the book's gravity
		a, err := carburation.ChokeArea(m.Times(1/r.num("FAR")), rho, p, get[units.Ratio](r, "Cd_air"))
		r.ok(err)
		want(r, "d_throat", roundHole(r, a))
	},
	"mathur-27-1": func(r *run) {
		site := func(tag string) air.Site {
			return air.Site{Pressure: get[units.Pressure](r, "p_"+tag), Temperature: get[units.Temperature](r, "T_"+tag), VapourPressure: get[units.Pressure](r, "psat_"+tag).Times(r.num("phi_" + tag))}
		}
		s, err := air.SitePower(get[units.Power](r, "P_ref"), get[units.Ratio](r, "eta_m"), site("ref"), site("site"), air.SiteOptions{})
		r.ok(err)
		want(r, "P_site", s.Power)
		r.numbers("bsfc_site", r.num("bsfc")*s.FuelRatio)
	},
	"mathur-8-4": func(r *run) {
		f, err := fuel.ParseFormula(r.word("fuel"))
		r.ok(err)
		s, err := fuel.Stoichiometric(f, fuel.Convention{WholeMasses: true, OxygenByMass: get[units.Ratio](r, "o2_in_air")})
		r.ok(err)
		want(r, "AFR_stoich", s.AFR)
	},
	"mathur-8-1": func(r *run) {
		n, err := fuel.NetFromGross(get[units.SpecificEnergy](r, "HCV"), get[units.Ratio](r, "H"), get[units.SpecificEnergy](r, "u_fg"))
		r.ok(err)
		want(r, "LCV", n)
	},
	"mathur-8-6": func(r *run) {
		conv := fuel.Convention{WholeMasses: true, OxygenByVolume: get[units.Ratio](r, "o2_in_air")}
		f, err := fuel.Composition{Carbon: get[units.Ratio](r, "C"), Hydrogen: get[units.Ratio](r, "H")}.Formula(conv)
		r.ok(err)
		s, err := fuel.Stoichiometric(f, conv)
		r.ok(err)
		lambda, err := s.Lambda(get[units.Ratio](r, "AFR"))
		r.ok(err)
		e, err := fuel.Burn(f, lambda, fuel.BurnOptions{Rich: fuel.NoHydrogen}, conv)
		r.ok(err)
		r.numbers("C_to_CO2", e.CarbonToCO2.Value())
		r.numbers("CO2", e.CO2.Value())
		r.numbers("CO", e.CO.Value())
		r.numbers("N2", e.N2.Value())
		r.numbers("H2O", e.H2O.Value())
	},
	"gupta-3-1": func(r *run) {
		conv := fuel.NitrogenPerOxygen(3.76)
		conv.GasConstant = r.num("R_univ")
		f, err := fuel.ParseFormula(r.word("fuel"))
		r.ok(err)
		e, err := fuel.Burn(f, units.Value(1+get[units.Ratio](r, "excess_air").Value()), fuel.BurnOptions{}, conv)
		r.ok(err)
		v, err := e.AirVolume(units.Kelvins(r.num("t")+273), get[units.Pressure](r, "p"))
		r.ok(err)
		r.numbers("V_air", v.CubicMetres()*1e3)
		r.numbers("M_reactants", e.MassBefore)
		r.numbers("M_products", e.MassAfter)
	},
	"gupta-3-2": func(r *run) {
		f, err := fuel.MixMoles(fuel.Portion{Formula: fuel.Formula{C: 7, H: 16}, Moles: r.num("C7H16")}, fuel.Portion{Formula: fuel.Formula{C: 8, H: 18}, Moles: r.num("C8H18")})
		r.ok(err)
		s, err := fuel.Stoichiometric(f, fuel.NitrogenPerOxygen(3.76))
		r.ok(err)
		want(r, "AFR", s.AFR.Times(r.num("O2")/s.OxygenMoles))
	},
	"gupta-3-3": func(r *run) {
		conv := fuel.Convention{WholeMasses: true, OxygenByMass: get[units.Ratio](r, "o2_in_air")}
		f, err := fuel.Composition{Carbon: units.Value(r.num("C")), Hydrogen: units.Value(r.num("H")), Oxygen: units.Value(r.num("O")), Sulphur: units.Value(r.num("S")), Nitrogen: units.Value(r.num("N"))}.Formula(conv)
		r.ok(err)
		s, err := fuel.Stoichiometric(f, conv)
		r.ok(err)
		want(r, "AFR_stoich", s.AFR)
	},
	"isa-geometric-2000": func(r *run) {
		a, err := air.StandardGeometric(get[units.Length](r, "Z"))
		r.ok(err)
		want(r, "T", a.Temperature)
		want(r, "p", a.Pressure)
		want(r, "rho", a.Density)
	},
	"standard-atmosphere": func(r *run) {
		a, err := air.Standard(get[units.Length](r, "H"))
		r.ok(err)
		want(r, "p", a.Pressure)
		want(r, "a", a.SoundSpeed)
	},
	"cipm2007-10c": func(r *run) {
		m, err := air.Moist(air.Weather{Pressure: get[units.Pressure](r, "p"), Temperature: get[units.Temperature](r, "t"), Humidity: get[units.Ratio](r, "RH")}, air.Options{})
		r.ok(err)
		want(r, "rho", m.Density)
	},
	"if97-psat-300k": func(r *run) {
		p, err := air.SaturationOverWater(get[units.Temperature](r, "T"))
		r.ok(err)
		want(r, "psat", p)
	},
	"iso5167-eps-1": func(r *run) {
		e, err := carburation.Expansibility(get[units.Length](r, "d").Ratio(get[units.Length](r, "D")), get[units.Pressure](r, "p2").Ratio(get[units.Pressure](r, "p1")), r.num("kappa"))
		r.ok(err)
		r.numbers("epsilon", e)
	},
	"orifice-discharge": func(r *run) {
		c, err := carburation.ParallelBore(r.num("Re"), r.num("l_over_d"))
		r.ok(err)
		r.numbers("Cd", c)
	},
	"drain-time": func(r *run) {
		t, err := carburation.EmptyingTime(get[units.Area](r, "A_tank"), get[units.Area](r, "A_hole"), get[units.Ratio](r, "Cd"), get[units.Length](r, "h0"), get[units.Length](r, "h1"))
		r.ok(err)
		want(r, "t", t)
	},
	"air-flow-constant": func(r *run) {
		k, err := carburation.Gas{RJoulesPerKilogramKelvin: r.num("R"), Gamma: r.num("gamma"), CpJoulesPerKilogramKelvin: r.num("cp")}.ChokeConstant()
		r.ok(err)
		r.numbers("constant", k)
	},
	"latent-per-air-ethanol": func(r *run) {
		f := fuel.Fuel{LatentHeat: get[units.SpecificEnergy](r, "h_fg"), AFR: get[units.Ratio](r, "AFR")}
		want(r, "h_fg_per_air", f.LatentHeatPerAir())
	},
}

// jetOfEngineFuel runs the jet that a throat and a mixture ask for.
func jetOfEngineFuel(lip string, g func(*run) float64) runner {
	return func(r *run) {
		rho := dry(get[units.Pressure](r, "p1"), get[units.Temperature](r, "T1"), 287)
		m := get[units.MassFlow](r, "m_fuel")
		p, err := carburation.Suction(m.Times(r.num("AFR")), rho, carburation.CircleArea(get[units.Length](r, "d_throat")), get[units.Ratio](r, "Cd_air"))
		r.ok(err)
		o := carburation.Orifice{Coefficient: get[units.Ratio](r, "Cd_fuel"), Lip: get[units.Length](r, lip), Gravity: units.MetresPerSecondSquared(g(r))}
		a, err := o.Size(m, p, specific(r, "sg"))
		r.ok(err)
		want(r, "d_jet", roundHole(r, a))
	}
}
