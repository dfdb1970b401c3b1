using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Drawing.Section;

/// <summary>How much the flags say.</summary>
public enum FlagText
{
    /// <summary>No flags.</summary>
    None,

    /// <summary>Short names, for a phone.</summary>
    Short,

    /// <summary>Full names.</summary>
    Full,
}

/// <summary>A reading shown at its part.</summary>
/// <param name="Text">Value and unit.</param>
/// <param name="Shape">Its status; null where it was not judged.</param>
public sealed record SectionReading(string Text, StatusShape? Shape = null);

/// <summary>How a section is drawn.</summary>
public sealed record SectionOptions
{
    /// <summary>Scale, px per mm.</summary>
    public double Scale { get; init; } = 0.43;

    /// <summary>Words of the reader's language.</summary>
    public required Words Words { get; init; }

    /// <summary>Units shown.</summary>
    public UnitDisplay Units { get; init; }

    /// <summary>States of parts by id; sound where not named.</summary>
    public IReadOnlyDictionary<string, PartState> States { get; init; } = new Dictionary<string, PartState>(StringComparer.Ordinal);

    /// <summary>Readings by part id.</summary>
    public IReadOnlyDictionary<string, SectionReading> Readings { get; init; } =
        new Dictionary<string, SectionReading>(StringComparer.Ordinal);

    /// <summary>Temperatures by tank id, <c>booster</c> and <c>supply</c>; set points of the description where not given.</summary>
    public IReadOnlyDictionary<string, Temperature> Water { get; init; } = new Dictionary<string, Temperature>(StringComparer.Ordinal);

    /// <summary>Water of each tank as share of full; where its float stops the fill if not given.</summary>
    public IReadOnlyDictionary<string, double>? Levels { get; init; }

    /// <summary>Figures of flows by flow id, in words; a flow with a figure is drawn strong.</summary>
    public IReadOnlyDictionary<string, string> Figures { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>Status of zones by id.</summary>
    public IReadOnlyDictionary<string, StatusShape> ZoneStatus { get; init; } = new Dictionary<string, StatusShape>(StringComparer.Ordinal);

    /// <summary>Selected part; null for none.</summary>
    public string? Selected { get; init; }

    /// <summary>Flags.</summary>
    public FlagText Flags { get; init; } = FlagText.Full;

    /// <summary>Rows of flags above and below.</summary>
    public int Rows { get; init; } = 5;

    /// <summary>Zone whose parts alone have flags; null for all. What is selected, faulty or read has its flag anyway.</summary>
    public string? Zone { get; init; }

    /// <summary>Pumps run: sprays are drawn where ware is.</summary>
    public bool Running { get; init; } = true;

    /// <summary>Load-side edge of the rack, mm from the load-end face; the first zone's middle where null.</summary>
    public double? RackAt { get; init; }

    /// <summary>Further racks, mm ahead of it.</summary>
    public IReadOnlyList<double> Ahead { get; init; } = [];

    /// <summary>Zones with their lengths under the drawing, and the scale bar.</summary>
    public bool ZoneStrip { get; init; } = true;

    /// <summary>For paper: greys, figures in the tanks, no sprays, and a number with a key for every flag without room.</summary>
    public bool Print { get; init; }

    /// <summary>Space at the sides, px.</summary>
    public double Pad { get; init; } = 12;
}
