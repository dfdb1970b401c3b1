using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Contracts.Machines;

/// <summary>The machine file, member by member, with what each figure can be at all.</summary>
internal static class MachineShape
{
    private static readonly Bounds Limit = Bounds.Water;

    internal static readonly string[] CurtainSlots = ["load", "prewash-wash", "wash-rinse", "rinse-final", "unload"];

    internal static readonly string[] Materials = ["ceramic", "glass", "steel", "melamine", "polycarbonate"];

    private static readonly string[] TankIds = ["prewash", "wash", "rinse"];

    private static readonly string[] ZoneIds = ["prewash", "wash", "power-rinse", "final-rinse"];

    private static readonly string[] FeederIds = [.. Enum.GetValues<FedProduct>().Select(FeederId)];

    private static readonly Shape<DataPlate> Plate = new(
        "plate",
        Degrees("washMinimum", p => p.WashMinimum, (p, a) => p with { WashMinimum = a }),
        Degrees("pumpedRinseMinimum", p => p.PumpedRinseMinimum, (p, a) => p with { PumpedRinseMinimum = a }),
        Degrees("finalRinseMinimum", p => p.FinalRinseMinimum, (p, a) => p with { FinalRinseMinimum = a }),
        Degrees("finalRinseMaximum", p => p.FinalRinseMaximum, (p, a) => p with { FinalRinseMaximum = a }),
        Flowing("pressureMinimum", p => p.PressureMinimum, (p, a) => p with { PressureMinimum = a }),
        Flowing("pressureMaximum", p => p.PressureMaximum, (p, a) => p with { PressureMaximum = a }),
        Strong("sanitizerMinimum", p => p.SanitizerMinimum, (p, a) => p with { SanitizerMinimum = a }),
        Strong("sanitizerMaximum", p => p.SanitizerMaximum, (p, a) => p with { SanitizerMaximum = a })
    );

    private static readonly Shape<Curtain> Curtains = new(
        "curtain",
        new FigureMember<Curtain, Length>("at", Bounds.Place, c => c.At, (c, f) => c with { At = f }),
        new FlagMember<Curtain>("long", c => c.Long, (c, f) => c with { Long = f })
    );

    private static readonly Shape<Feeder> Feeders = new(
        "feeder",
        new FigureMember<Feeder, MassConcentration>(
            "strength",
            Bounds.Positive(100, Units.GramPerLitre),
            f => f.Strength,
            (f, x) => f with { Strength = x }
        ),
        new OptionalFigureMember<Feeder, MassConcentration>(
            "band",
            Bounds.Positive(100, Units.GramPerLitre),
            f => f.Band,
            (f, x) => f with { Band = x }
        ),
        new OptionalFigureMember<Feeder, MassFlow>(
            "rate",
            Bounds.Positive(1, Units.KilogramPerSecond),
            f => f.Rate,
            (f, x) => f with { Rate = x }
        ),
        new TextMember<Feeder>("tank", f => f.Tank, (f, x) => f with { Tank = x }, TankIds)
    );

    private static readonly Shape<Ware> WareShape = new(
        "ware",
        new FigureMember<Ware, Length>(
            "rackLength",
            Bounds.Positive(2, Units.Metre),
            w => w.RackLength,
            (w, f) => w with { RackLength = f }
        ),
        new CountMember<Ware>("pieces", 0, 500, whole: true, w => w.Pieces, (w, n) => w with { Pieces = (int)n! }),
        new TextMember<Ware>("material", w => w.Material, (w, t) => w with { Material = t! }, Materials, optional: false),
        new FigureMember<Ware, Length>(
            "thickness",
            Bounds.Positive(50, Units.Millimetre),
            w => w.Thickness,
            (w, f) => w with { Thickness = f }
        ),
        new FigureMember<Ware, Area>("area", Bounds.Positive(2, Units.SquareMetre), w => w.Area, (w, f) => w with { Area = f }),
        new FigureMember<Ware, Temperature>("in", Bounds.Water, w => w.In, (w, f) => w with { In = f }),
        new FigureMember<Ware, Mass>("soil", Bounds.NotNegative(5, Units.Kilogram), w => w.Soil, (w, f) => w with { Soil = f }),
        new FigureMember<Ware, Mass>("carryOver", Bounds.Positive(5, Units.Kilogram), w => w.CarryOver, (w, f) => w with { CarryOver = f }),
        new FigureMember<Ware, Mass>(
            "rackMass",
            Bounds.NotNegative(20, Units.Kilogram),
            w => w.RackMass,
            (w, f) => w with { RackMass = f }
        ),
        new FigureMember<Ware, Area>(
            "rackArea",
            Bounds.NotNegative(10, Units.SquareMetre),
            w => w.RackArea,
            (w, f) => w with { RackArea = f }
        ),
        new FigureMember<Ware, Length>(
            "rackThickness",
            Bounds.Positive(50, Units.Millimetre),
            w => w.RackThickness,
            (w, f) => w with { RackThickness = f }
        )
    );

    internal static readonly Shape<Machine> Machine = new(
        "machine",
        new TextMember<Machine>("name", m => m.Name, (m, t) => m with { Name = t }),
        new TextMember<Machine>("kitchen", m => m.Kitchen, (m, t) => m with { Kitchen = t }),
        new WordMember<Machine, SanitizingMethod>("sanitizing", m => m.Sanitizing, (m, w) => m with { Sanitizing = w }),
        new PartMember<Machine, DataPlate>(
            "plate",
            Plate,
            m => m.Plate,
            (m, p) => m with { Plate = p },
            () => new DataPlate(),
            optional: true
        ),
        new CountMember<Machine>(
            "plateRacksPerHour",
            1,
            2000,
            whole: false,
            m => m.PlateRacksPerHour,
            (m, n) => m with { PlateRacksPerHour = n }
        ),
        new FigureMember<Machine, Length>("length", Bounds.Positive(30, Units.Metre), m => m.Length, (m, f) => m with { Length = f }),
        new FlagMember<Machine>("runsRightToLeft", m => m.RunsRightToLeft, (m, f) => m with { RunsRightToLeft = f }),
        new PartsMember<Machine, Tank>("tanks", PartShapes.Tank, t => t.Id, m => m.Tanks, (m, t) => m with { Tanks = t }, TankIds),
        new PartsMember<Machine, SprayZone>("zones", PartShapes.Zone, z => z.Id, m => m.Zones, (m, z) => m with { Zones = z }, ZoneIds),
        new PartMember<Machine, FinalRinse>("finalRinse", PartShapes.Rinse, m => m.FinalRinse, (m, p) => m with { FinalRinse = p }),
        new PartMember<Machine, Booster>(
            "booster",
            PartShapes.Booster,
            m => m.Booster,
            (m, p) => m with { Booster = p },
            BlankBooster,
            optional: true
        ),
        new PartMember<Machine, Supply>("supply", PartShapes.Supply, m => m.Supply, (m, p) => m with { Supply = p! }),
        new PartMember<Machine, Conveyor>("conveyor", PartShapes.Conveyor, m => m.Conveyor, (m, p) => m with { Conveyor = p }),
        new PartMember<Machine, DoorCycle>("cycle", PartShapes.Cycle, m => m.Cycle, (m, p) => m with { Cycle = p }),
        new OptionalFigureMember<Machine, Length>(
            "loadTable",
            Bounds.Positive(30, Units.Metre),
            m => m.LoadTable,
            (m, f) => m with { LoadTable = f }
        ),
        new OptionalFigureMember<Machine, Length>(
            "unloadTable",
            Bounds.Positive(30, Units.Metre),
            m => m.UnloadTable,
            (m, f) => m with { UnloadTable = f }
        ),
        new PartsMember<Machine, Curtain>(
            "curtains",
            Curtains,
            c => c.Slot,
            m => m.Curtains,
            (m, c) => m with { Curtains = c },
            CurtainSlots,
            (slot, m) => new Curtain(slot, m.Length, Long: true),
            (a, b) => a.At.Written.SI.CompareTo(b.At.Written.SI) is not 0 and var by ? by : Slot(a).CompareTo(Slot(b))
        ),
        new PlacesMember<Machine>("vents", Bounds.Place, m => m.Vents, (m, v) => m with { Vents = v }),
        new PartsMember<Machine, Feeder>(
            "feeders",
            Feeders,
            f => FeederId(f.Product),
            m => m.Feeders,
            (m, f) => m with { Feeders = f },
            FeederIds,
            BlankFeeder,
            (a, b) => a.Product.CompareTo(b.Product)
        ),
        new PartMember<Machine, Ware>("ware", WareShape, m => m.Ware, (m, p) => m with { Ware = p! }),
        new SetUpsMember()
    );

    private static string FeederId(FedProduct product) =>
        product switch
        {
            FedProduct.Detergent => "detergent",
            FedProduct.RinseAdditive => "rinse-additive",
            _ => "sanitizer",
        };

    private static int Slot(Curtain curtain) => Array.IndexOf(CurtainSlots, curtain.Slot);

    private static Booster BlankBooster() => TypicalMachines.Of(MachineKind.DoorHotWater).Booster!;

    private static Feeder BlankFeeder(string id, Machine machine)
    {
        var tank = machine.FinalRinse is null ? machine.Tanks[^1].Id : null;
        return
            TypicalMachines.Of(MachineKind.DoorChemical).Feeders.Single(f => FeederId(f.Product) == id) is var typical
            && typical.Product == FedProduct.Detergent
            ? typical
            : typical with
            {
                Tank = tank,
            };
    }

    private static PlateMember<DataPlate> Degrees(string name, Func<DataPlate, Amount?> get, Func<DataPlate, Amount?, DataPlate> set) =>
        new(name, Dimension.Temperature, Limit, get, set);

    private static PlateMember<DataPlate> Flowing(string name, Func<DataPlate, Amount?> get, Func<DataPlate, Amount?, DataPlate> set) =>
        new(name, Dimension.GaugePressure, Bounds.Positive(1000, Units.Kilopascal), get, set);

    private static PlateMember<DataPlate> Strong(string name, Func<DataPlate, Amount?> get, Func<DataPlate, Amount?, DataPlate> set) =>
        new(name, Dimension.MassConcentration, Bounds.Positive(100, Units.GramPerLitre), get, set);
}
