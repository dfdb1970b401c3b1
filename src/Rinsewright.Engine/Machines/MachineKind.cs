namespace Rinsewright.Engine.Machines;

/// <summary>Kinds of machine, by how ware and water move through them.</summary>
public enum MachineKind
{
    /// <summary>One low chamber under a counter, hot-water sanitizing.</summary>
    Undercounter,

    /// <summary>One chamber with lifting doors, hot-water sanitizing.</summary>
    DoorHotWater,

    /// <summary>One chamber with lifting doors, chemical sanitizing, filled and dumped each rack.</summary>
    DoorChemical,

    /// <summary>Rack conveyor with a wash tank.</summary>
    RackConveyorOneTank,

    /// <summary>Rack conveyor with a wash and a pumped-rinse tank.</summary>
    RackConveyorTwoTank,

    /// <summary>Rack conveyor with a prewash, a wash and a pumped-rinse tank.</summary>
    RackConveyorThreeTank,

    /// <summary>Belt machine that carries ware without racks, with a prewash, a wash and a pumped-rinse tank.</summary>
    Flight,
}
