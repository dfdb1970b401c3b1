namespace Rinsewright.Engine.Machines;

/// <summary>Solutes the model follows, as columns of its arrays.</summary>
internal static class Solute
{
    public const int Detergent = 0;
    public const int Additive = 1;
    public const int Soil = 2;
    public const int Sanitizer = 3;
    public const int Count = 4;
}

/// <summary>A part of a rack on its way: what it has gathered and carries. Kept and used again by the ring that holds it.</summary>
internal sealed class WareGroup
{
    /// <summary>Cells over half a piece; both faces see the same, so that the other half is alike.</summary>
    public const int Cells = 4;

    /// <summary>Not in any spray: warm moist air of the tunnel or chamber.</summary>
    public const int Gap = -1;

    /// <summary>In room air.</summary>
    public const int Room = -2;

    /// <summary>Under the final rinse.</summary>
    public const int FinalRinse = -3;

    /// <summary>Middle, m from the load end; on a door machine unused.</summary>
    public double Position { get; set; }

    /// <summary>Door machine: seconds since it was taken out; negative while inside.</summary>
    public double Outside { get; set; }

    /// <summary>Where it is: index of the tank that sprays it, or one of the names above.</summary>
    public int Place { get; set; }

    /// <summary>Tank its film went into; −1 while it carries its film.</summary>
    public int Bath { get; set; }

    /// <summary>Tank it takes its film from in this step; −1 for none.</summary>
    public int Leaves { get; set; }

    /// <summary>Temperatures from the face to the middle, °C.</summary>
    public double[] Slab { get; } = new double[Cells];

    /// <summary>Mean of the pieces, °C.</summary>
    public double Mean { get; set; }

    /// <summary>Plastic rack, °C.</summary>
    public double Rack { get; set; }

    /// <summary>Film, °C.</summary>
    public double Film { get; set; }

    /// <summary>Solutes in the film, kg/kg.</summary>
    public double[] FilmShare { get; } = new double[Solute.Count];

    /// <summary>Share of the film that the final rinse leaves in this step; 1 where it does not hit.</summary>
    public double FilmKept { get; set; }

    /// <summary>Soil still on it, kg.</summary>
    public double Soil { get; set; }

    /// <summary>Heat unit equivalents so far.</summary>
    public double HeatUnits { get; set; }

    /// <summary>A0 so far, s.</summary>
    public double A0 { get; set; }

    /// <summary>Hottest surface so far, °C.</summary>
    public double Peak { get; set; }

    /// <summary>Makes it a fresh one.</summary>
    public void Enter(double position, double celsius, double soil)
    {
        Position = position;
        Outside = -1;
        Place = Room;
        Bath = -1;
        Leaves = -1;
        Array.Fill(Slab, celsius);
        Mean = celsius;
        Rack = celsius;
        Film = celsius;
        Array.Clear(FilmShare);
        FilmKept = 1;
        Soil = soil;
        HeatUnits = 0;
        A0 = 0;
        Peak = celsius;
    }
}
