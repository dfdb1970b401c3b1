using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Bench;

/// <summary>Use and cost.</summary>
internal static class CostTools
{
    private const double DaysInMonth = 30.4;

    public static BenchTool Use { get; } =
        new(
            "use-and-cost",
            BenchArea.Cost,
            [
                FieldsOf.Number("racksPerDay", 300, 1, 50000, 10),
                FieldsOf.Number("fillsPerDay", 2, 0, 50, 1),
                FieldsOf.Tank(),
                FieldsOf.RinsePerRack(),
                FieldsOf.Strength(),
                new("additivePerRack", Units.Millilitre, 0.5, 0, 20),
                new("sanitizerPerRack", Units.Millilitre, 0, 0, 100),
                new("waterRise", Units.FahrenheitDifference, 120, 0, 180),
                FieldsOf.Number("shiftsPerDay", 2, 1, 6),
                FieldsOf.Number("coversPerDay", null, 1, 100000, 0, optional: true),
                FieldsOf.Number("detergentPrice", null, 0, 1000, 0, optional: true),
                FieldsOf.Number("additivePrice", null, 0, 1000, 0, optional: true),
                FieldsOf.Number("sanitizerPrice", null, 0, 1000, 0, optional: true),
                FieldsOf.Number("waterPrice", null, 0, 1000, 0, optional: true),
                FieldsOf.Number("energyPrice", null, 0, 10, 0, optional: true),
                new("drum", Units.Kilogram, null, 0.1, 2000, 0, Optional: true),
                FieldsOf.Number("drumDays", null, 0.1, 1000, 0, optional: true),
            ],
            [],
            SolveUse,
            "racksPerDay"
        );

    public static BenchTool Compare { get; } =
        new(
            "compare-products",
            BenchArea.Cost,
            [
                FieldsOf.Number("detergentPrice", 6, 0, 1000, 0.5),
                FieldsOf.Active(),
                FieldsOf.Number("otherPrice", 8, 0, 1000, 0.5),
                new("otherActive", Units.Percent, 30, 0.5, 80, 1),
                FieldsOf.Strength(),
                FieldsOf.RinsePerRack(),
                FieldsOf.Number("racksPerDay", 300, 1, 50000, 10),
                FieldsOf.Number("fillsPerDay", 2, 0, 50, 1),
                FieldsOf.Tank(),
            ],
            [],
            SolveCompare
        );

    private static BenchAnswer SolveUse(BenchInput i)
    {
        var (racks, fills) = (i.Number("racksPerDay"), i.Number("fillsPerDay"));
        var (tank, rinse, strength) = (i.Get<Volume>("tank"), i.Get<Volume>("rinsePerRack"), i.Get<MassConcentration>("strength"));
        var charge = fills * (strength * tank);
        var held = racks * (strength * rinse);
        var detergent = charge + held;
        var additive = racks * i.Get<Volume>("additivePerRack");
        var sanitizer = racks * i.Get<Volume>("sanitizerPerRack");
        var water = (fills * tank) + (racks * rinse);
        var heat =
            water.InCubicMetre
            * LiquidWater.Density
            * LiquidWater.HeatCapacity
            * i.Get<TemperatureDifference>("waterRise").InCelsius
            / 3.6e6;
        var shifts = i.Number("shiftsPerDay");
        var working = new Working()
            .Gives("detergentPerDay", detergent.In(Units.Gram), 0)
            .Gives("detergentPerRack", new Amount(detergent.InGram / racks, Units.Gram), 2)
            .Gives("detergentPerShift", (detergent / shifts).In(Units.Gram), 0)
            .Gives("detergentPerMonth", (DaysInMonth * detergent).In(Units.Kilogram), 1)
            .Gives("additivePerDay", additive.In(Units.Millilitre), 0)
            .Gives("waterPerDay", water.In(Units.Gallon), 0)
            .Gives("heatPerDay", new Amount(heat, Units.KilowattHour), 1)
            .By(
                "C24",
                "mixed tank",
                $"{fills:0} · {tank.InLitre:0.0} L · {strength.InGramPerLitre:0.00} g/L + {racks:0} · {rinse.InLitre:0.00} L · {strength.InGramPerLitre:0.00} g/L = {detergent.InGram:0} g"
            )
            .By(
                "C24",
                "definition",
                $"{fills:0} · {tank.InGallon:0.0} gal + {racks:0} · {rinse.InGallon:0.00} gal = {water.InGallon:0} gal"
            )
            .By(
                "B2",
                "heat balance",
                $"{water.InCubicMetre:0.000} m³ · 983 · 4186 · {i.Get<TemperatureDifference>("waterRise").InCelsius:0.0} K / 3.6·10⁶ = {heat:0.0} kWh"
            );
        double? cost = null;
        void Price(string id, double quantity)
        {
            if (i.Find(id) is { } price)
            {
                cost = (cost ?? 0) + (price.Value * quantity);
            }
        }

        Price("detergentPrice", detergent.InKilogram);
        Price("additivePrice", additive.InLitre);
        Price("sanitizerPrice", sanitizer.InLitre);
        Price("waterPrice", water.InCubicMetre);
        Price("energyPrice", heat);
        if (cost is { } paid)
        {
            working
                .Gives("costPerDay", paid, 2)
                .Gives("costPerShift", paid / shifts, 2)
                .Gives("costPerMonth", DaysInMonth * paid, 2)
                .Gives("costPerRack", paid / racks, 4)
                .Note("bench.note.only-priced")
                .Note("bench.note.heat-of-water-only");
            if (i.Find("coversPerDay") is { } covers)
            {
                working.Gives("costPerCover", paid / covers.Value, 4);
            }
        }

        if (i.Maybe<Mass>("drum") is { } drum && detergent.InGram > 0)
        {
            var should = drum.InGram / detergent.InGram;
            working
                .Gives("drumShould", Duration.FromSecond(86400 * should).In(Units.Day), 1)
                .By("C25", "definition", $"{drum.InGram:0} g / {detergent.InGram:0} g = {should:0.0} d");
            if (i.Find("drumDays") is { } lasted && held.InGram > 0)
            {
                var over = should / lasted.Value;
                var extra = (drum.InGram / lasted.Value) - detergent.InGram;
                working
                    .Gives("usedAgainstShould", Ratio.FromFraction(over).In(Units.Percent), 0)
                    .Gives(extra >= 0 ? "extraPerDay" : "lessPerDay", new Amount(Math.Abs(extra), Units.Gram), 0)
                    .Gives("strengthInstead", new Amount(strength.InGramPerLitre * over, Units.GramPerLitre), 2)
                    .By("B3", "mass balance", $"{drum.InGram:0} g / {lasted.Value:0.0} d − {detergent.InGram:0} g = {extra:0} g/d")
                    .Note(
                        over > 1.15 ? "bench.note.too-much-used"
                        : over < 0.85 ? "bench.note.too-little-used"
                        : "bench.note.use-agrees"
                    );
                if (over > 1.15)
                {
                    // Water and racks are causes of too much only: a drum that lasts too long is no leak the other way round.
                    working
                        .Gives("waterInstead", new Amount(extra / strength.InGramPerLitre, Units.Litre), 0)
                        .Gives("racksInstead", racks + (extra / (strength * rinse).InGram), 0)
                        .Note("bench.note.cause-leak", ("litres", new Amount(Math.Round(extra / strength.InGramPerLitre), Units.Litre)))
                        .Note("bench.note.cause-overfeed", ("strength", new Amount(strength.InGramPerLitre * over, Units.GramPerLitre)))
                        .Note("bench.note.cause-racks", ("racks", Math.Round(racks + (extra / (strength * rinse).InGram))))
                        .Note("bench.note.cause-unknown");
                }
            }
        }

        return working.Note("bench.note.all-rinse-reaches-tank").Caution("bench.caution.drum").Answer();
    }

    private static BenchAnswer SolveCompare(BenchInput i)
    {
        var (active, other) = (i.Get<Ratio>("active"), i.Get<Ratio>("otherActive"));
        var (price, otherPrice) = (i.Number("detergentPrice"), i.Number("otherPrice"));
        var perRack = (i.Get<MassConcentration>("strength") * i.Get<Volume>("rinsePerRack")).InKilogram;
        var equal = active.InFraction / other.InFraction;
        var (a, b) = (price * perRack, otherPrice * perRack * equal);
        var perDay =
            i.Get<MassConcentration>("strength")
            * ((i.Number("fillsPerDay") * i.Get<Volume>("tank")) + (i.Number("racksPerDay") * i.Get<Volume>("rinsePerRack")));
        var (monthA, monthB) = (DaysInMonth * perDay.InKilogram * price, DaysInMonth * perDay.InKilogram * equal * otherPrice);
        return new Working()
            .Gives("costPerRack", a, 4)
            .Gives("otherCostPerRack", b, 4)
            .Gives("otherStrength", (i.Get<MassConcentration>("strength") * equal).In(Units.GramPerLitre), 2)
            .Gives("evenPrice", price / equal, 2)
            .Gives("costPerMonth", monthA, 2)
            .Gives("otherCostPerMonth", monthB, 2)
            .Gives("otherSaves", monthA - monthB, 2)
            .By(
                "C4",
                "definition",
                $"{i.Get<MassConcentration>("strength").InGramPerLitre:0.00} g/L · {active.InPercent:0.#} % / {other.InPercent:0.#} % = {i.Get<MassConcentration>("strength").InGramPerLitre * equal:0.00} g/L"
            )
            .By(
                "C22",
                "mixed tank",
                $"{perRack * 1000:0.00} g · {price:0.00}/kg = {a:0.0000};  {perRack * equal * 1000:0.00} g · {otherPrice:0.00}/kg = {b:0.0000}"
            )
            .By(
                "C24",
                "mixed tank",
                $"{DaysInMonth:0.0} · {perDay.InKilogram:0.000} kg · {price:0.00} = {monthA:0.00};  {DaysInMonth:0.0} · {perDay.InKilogram * equal:0.000} kg · {otherPrice:0.00} = {monthB:0.00}"
            )
            .Note("bench.note.alkali-is-not-all")
            .Answer();
    }
}
