namespace Rinsewright.Files.Demo;

/// <summary>
/// Invented logger files of the demo service: surfaces that follow their water with a time constant, made up for the demo, no measurements.
/// </summary>
public static class DemoLoggers
{
    /// <summary>Two-tank conveyor at Larkspur Lodge, five passes, one sample a second, °F.</summary>
    public const string LarkspurTwoTank = "larkspur-two-tank.csv";

    /// <summary>Undercounter machine at Saltbox Oyster Bar, four cycles, °C with decimal comma and day first.</summary>
    public const string SaltboxUndercounter = "saltbox-undercounter.csv";

    /// <summary>Door machine at Millrace Brewery with a cold final rinse, three cycles, °C.</summary>
    public const string MillraceDoor = "millrace-door.csv";

    /// <summary>Names of all files.</summary>
    public static IReadOnlyList<string> Names { get; } = [LarkspurTwoTank, SaltboxUndercounter, MillraceDoor];

    /// <summary>The bytes of one file.</summary>
    /// <exception cref="ArgumentException">There is no such file.</exception>
    public static byte[] Bytes(string name)
    {
        using var stream =
            typeof(DemoLoggers).Assembly.GetManifestResourceStream("Demo/" + name)
            ?? throw new ArgumentException($"There is no demo file '{name}'.", nameof(name));
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }
}
