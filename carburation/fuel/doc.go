// Package fuel gives what a fuel needs to burn and how much of it passes a jet.
//
//	task                                          use
//	a formula such as C8H18, CH1.87 or CH3OH      ParseFormula, Formula
//	shares by mass of carbon, hydrogen ...        Composition
//	air that burns a fuel exactly                 Stoichiometric
//	what air a book takes to be                   Convention, NitrogenPerOxygen
//	what leaves the exhaust                       Burn
//	carbon monoxide to lambda                     LambdaFromCO
//	the fuels of the tables                       All, Named, Petrol
//	blends by volume, by mass, by moles           BlendByVolume, BlendByMass, MixMoles
//	density at a temperature                      Fuel.DensityAt, PetroleumExpansion
//	net from gross heating value                  NetFromGross
//	chill of the charge, heat of it               Fuel.LatentHeatPerAir, Fuel.HeatPerAir
//	main-jet change from one fuel to another      JetFactor
//
// Not covered: knock, volatility and vapour lock, additives, the change of
// volume when alcohol and petrol mix (under 0.3 %), and any advice to make a
// blend: benzole and leaded mixtures are here to read old data only.
package fuel
