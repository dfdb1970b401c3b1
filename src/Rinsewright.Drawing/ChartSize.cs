using System.Runtime.InteropServices;

namespace Rinsewright.Drawing;

/// <summary>Size of a chart.</summary>
/// <param name="Width">Width, px; from 300 on.</param>
/// <param name="TemperatureHeight">Height of the temperature plot, px.</param>
/// <param name="DoseHeight">Height of the dose plot, px.</param>
public sealed record ChartSize(double Width, double TemperatureHeight = 178, double DoseHeight = 96)
{
    /// <summary>A phone held upright.</summary>
    public static ChartSize Phone { get; } = new(340);

    /// <summary>A column of the desk.</summary>
    public static ChartSize Desk { get; } = new(744, 190, 104);

    /// <summary>The width of a sheet of paper, before it is scaled down.</summary>
    public static ChartSize Paper { get; } = new(680, 128, 70);

    /// <summary>The same with less height, for a sheet that would else run over by a little.</summary>
    public static IReadOnlyList<ChartSize> LowerPaper { get; } =
    [
        Paper with
        {
            TemperatureHeight = 116,
            DoseHeight = 62,
        },
        Paper with
        {
            TemperatureHeight = 104,
            DoseHeight = 55,
        },
        Paper with
        {
            TemperatureHeight = 94,
            DoseHeight = 48,
        },
        Paper with
        {
            TemperatureHeight = 84,
            DoseHeight = 44,
        },
    ];
}

/// <summary>The stretch of time shown.</summary>
/// <param name="FromSeconds">Left edge, s.</param>
/// <param name="ToSeconds">Right edge, s; later than <paramref name="FromSeconds"/>.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ChartWindow(double FromSeconds, double ToSeconds);
