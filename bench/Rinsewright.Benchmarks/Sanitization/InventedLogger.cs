using System.Globalization;
using System.Text;

namespace Rinsewright.Benchmarks.Sanitization;

/// <summary>An invented plate-riding logger: one sample a second, a rest at room temperature, then a pass through a two-tank machine, again and again.</summary>
internal static class InventedLogger
{
    private const double Room = 24;

    // Zones of the pass: seconds the ware spends there and the temperature its surface tends to, °C.
    private static readonly (int Seconds, double Towards, double TimeConstant)[] Zones = [(24, 66, 9), (12, 71, 6), (12, 84, 8)];

    /// <summary>Writes a file and returns how many passes it holds.</summary>
    public static int Write(string path, int rows, int passEvery)
    {
        var random = new Random(20261125);
        var inPass = Zones.Sum(z => z.Seconds);
        var at = new DateTime(2026, 1, 5, 6, 0, 0, DateTimeKind.Unspecified);
        var surface = Room;
        var hotter = 0.0;
        var passes = 0;
        using var writer = new StreamWriter(path, append: false, new UTF8Encoding(false), 1 << 20) { NewLine = "\n" };
        writer.WriteLine("Time,Plate surface (\u00b0C)");
        Span<char> line = stackalloc char[64];
        for (var i = 0; i < rows; i++)
        {
            // The first pass starts after a rest, the last one ends before the file does.
            var second = (i + inPass) % passEvery - (passEvery - inPass - 120);
            var whole = i - second + inPass + 120 < rows;
            if (second == 0 && whole)
            {
                passes++;
                // From a rinse that just fails to one that proves easily.
                hotter = (random.NextDouble() * 8) - 4;
            }

            var (towards, constant) = whole && second >= 0 && second < inPass ? Zone(second, hotter) : (Room, 55);
            surface += (towards - surface) / constant;
            var shown = surface + ((random.NextDouble() - 0.5) * 0.2);
            at.AddSeconds(i).TryFormat(line, out var n, "yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);
            line[n++] = ',';
            shown.TryFormat(line[n..], out var m, "0.0", CultureInfo.InvariantCulture);
            writer.WriteLine(line[..(n + m)]);
        }

        return passes;
    }

    private static (double Towards, double Constant) Zone(int second, double hotter)
    {
        foreach (var (seconds, towards, constant) in Zones)
        {
            if (second < seconds)
            {
                return (towards + hotter, constant);
            }

            second -= seconds;
        }

        throw new ArgumentOutOfRangeException(nameof(second), second, "Inside the pass.");
    }
}
