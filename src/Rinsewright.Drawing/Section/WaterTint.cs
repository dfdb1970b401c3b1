using Rinsewright.Engine.Quantities;

namespace Rinsewright.Drawing.Section;

/// <summary>Colour of water by its temperature: the open palette cividis over 100 to 195 °F, ten stops, straight between them; four greys on paper.</summary>
public static class WaterTint
{
    /// <summary>Temperature the ramp begins at, °F.</summary>
    public const double Coolest = 100;

    /// <summary>Temperature it ends at, °F.</summary>
    public const double Hottest = 195;

    private static readonly uint[] Stops =
    [
        0x00224E,
        0x123570,
        0x3B496C,
        0x575D6D,
        0x707173,
        0x8A8678,
        0xA59C74,
        0xC3B369,
        0xE1CC55,
        0xFEE838,
    ];

    // The hotter, the lighter, as on screen; far enough apart for a photocopy.
    private static readonly uint[] Greys = [0x8C8C8C, 0xA8A8A8, 0xC4C4C4, 0xE0E0E0];

    /// <summary>Tint of water at a temperature; outside the ramp that of its nearer end.</summary>
    public static SceneTint At(Temperature temperature)
    {
        var share = Math.Clamp((temperature.InFahrenheit - Coolest) / (Hottest - Coolest), 0, 1);
        var place = share * (Stops.Length - 1);
        var stop = Math.Min(Stops.Length - 2, (int)place);
        var grade = Math.Min(Greys.Length - 1, (int)(share * Greys.Length));
        return new SceneTint(Mix(Stops[stop], Stops[stop + 1], place - stop), Greys[grade], grade + 1);
    }

    private static uint Mix(uint from, uint to, double share)
    {
        uint Channel(int shift)
        {
            double a = (from >> shift) & 0xFF;
            double b = (to >> shift) & 0xFF;
            return (uint)Math.Round(a + ((b - a) * share)) << shift;
        }

        return Channel(16) | Channel(8) | Channel(0);
    }
}
