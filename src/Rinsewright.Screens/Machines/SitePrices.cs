using System.Text.Json.Serialization;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Client.Machines;

/// <summary>A machine's day and what its site pays, as typed; in the site's own currency. What nobody has said is absent.</summary>
/// <param name="Racks">Racks a day.</param>
/// <param name="StandByHours">Hours a day hot and without racks.</param>
/// <param name="Electricity">A kilowatt hour.</param>
/// <param name="Fuel">A kilowatt hour of heat from steam or gas.</param>
/// <param name="Water">A cubic metre with sewer.</param>
/// <param name="HotWater">What the building's heater adds to a cubic metre.</param>
/// <param name="Detergent">A kilogram.</param>
/// <param name="RinseAdditive">A kilogram.</param>
/// <param name="Sanitizer">A kilogram of the substance that counts.</param>
public sealed record SitePrices(
    double? Racks = null,
    double? StandByHours = null,
    double? Electricity = null,
    double? Fuel = null,
    double? Water = null,
    double? HotWater = null,
    double? Detergent = null,
    double? RinseAdditive = null,
    double? Sanitizer = null
)
{
    /// <summary>The day; null until its racks are said.</summary>
    [JsonIgnore]
    public DayOfUse? Day => Racks is > 0 and { } racks ? new DayOfUse(racks, StandByHours ?? 0) : null;

    /// <summary>What situations are held against.</summary>
    [JsonIgnore]
    public WhatIfTerms Terms => new(Day: Day, Tariff: new Tariff(Electricity, Fuel, Water, HotWater, Detergent, RinseAdditive, Sanitizer));
}
