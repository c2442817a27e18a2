package refdata

// Caution is a danger that goes with a result. Cautions are comparable; each
// has a text for the reader, and all defer to the machine's own manual, local
// law and a qualified person.
type Caution string

// The cautions.
const (
	SpringsUnderLoad   Caution = "springs-under-load"
	PetrolVapour       Caution = "petrol-vapour"
	ValveMeetsPiston   Caution = "valve-meets-piston"
	AsbestosLinings    Caution = "asbestos-linings"
	RetainingNuts      Caution = "retaining-nuts"
	OldBolts           Caution = "old-bolts"
	KickBack           Caution = "kick-back"
	OilBeforeStart     Caution = "oil-before-start"
	BrakesBeforeRoad   Caution = "brakes-before-road"
	HighTension        Caution = "high-tension"
	CarbonMonoxide     Caution = "carbon-monoxide"
	WeakMixture        Caution = "weak-mixture"
	AirTurnsCrank      Caution = "air-turns-crank"
	StartingPointsOnly Caution = "starting-points-only"
	DeferToManual      Caution = "defer-to-manual"
)

// Text returns what the reader is told.
func (c Caution) Text() string {
	switch c {
	case SpringsUnderLoad:
		return "Springs under load store enough energy to injure: release them evenly, with a plate or clamp that holds them, and wear eye protection."
	case PetrolVapour:
		return "Petrol vapour lights at any workshop temperature and lies low: no flame, heater, switch or lead lamp near, work in moving air, and keep an extinguisher by."
	case ValveMeetsPiston:
		return "Wrong timing can drive a valve into the piston or into the other valve: turn by hand only, two slow full turns, plug out, and stop at any resistance."
	case AsbestosLinings:
		return "Old clutch and brake linings may hold asbestos: do not blow, brush or dry-sand them; keep dust wet and bagged, and follow local rules."
	case RetainingNuts:
		return "Find out whether a nut is right- or left-handed before undoing it, renew its lock washer, and never run with a retaining nut loose."
	case OldBolts:
		return "Old and unmarked bolts have unknown strength: do not tighten them to a figure for new ones, and renew those that hold wheels, brakes or steering."
	case KickBack:
		return "An engine timed too far advanced, or left on full advance, can kick back and break an ankle: retard before starting, and wear stout boots."
	case OilBeforeStart:
		return "See oil feed and return working before the first start and again in the first minute of running."
	case BrakesBeforeRoad:
		return "Check brakes, tyres, steering and chain before any road test, and make the first one short, slow and away from traffic."
	case HighTension:
		return "Ignition high tension can stop a heart or light vapour: earth the plug, and keep hands and fuel away while the engine is turned."
	case CarbonMonoxide:
		return "Exhaust holds several per cent of carbon monoxide: run an engine only outdoors or with extraction."
	case WeakMixture:
		return "A weak mixture at full throttle can melt a piston: start rich and work towards weak."
	case AirTurnsCrank:
		return "Air let into a cylinder pushes with hundreds of kilograms and swings crank, spanner and kick-starter round off dead centre: let it in slowly, out of gear, with nothing and nobody in the way, and eyes covered."
	case StartingPointsOnly:
		return "Starting points are ranges to begin from, not promises."
	case DeferToManual:
		return "The machine's own manual, local law and a qualified person come before anything printed here."
	}
	return string(c)
}

// MarshalText returns the stable name.
func (c Caution) MarshalText() ([]byte, error) { return []byte(c), nil }
