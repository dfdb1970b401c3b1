namespace Rinsewright.Engine.Heat;

/// <summary>
/// A well-stirred body of water with its metal, heated at a steady power and losing heat in proportion to its warmth. Equations H10 and H11, closed form.
/// </summary>
/// <param name="Capacity">Heat held by water and metal, J/K.</param>
/// <param name="Loss">Heat lost per kelvin above the room, W/K.</param>
/// <param name="Room">Room, °C.</param>
internal readonly record struct LumpedHeat(double Capacity, double Loss, double Room)
{
    /// <summary>Temperature it goes to in the end, °C; null where nothing holds it.</summary>
    public double? Settles(double power) => Loss > 0 ? Room + (power / Loss) : null;

    /// <summary>Temperature after a time, °C. Equation H10.</summary>
    /// <param name="start">At its start, °C.</param>
    /// <param name="power">Heat put in, W.</param>
    /// <param name="seconds">Time.</param>
    public double After(double start, double power, double seconds)
    {
        if (Loss <= 0)
        {
            return start + (power * seconds / Capacity);
        }

        var settled = Room + (power / Loss);
        return settled + ((start - settled) * Math.Exp(-Loss * seconds / Capacity));
    }

    /// <summary>Seconds from one temperature to another; null where it never gets there. Equation H11.</summary>
    /// <param name="from">°C.</param>
    /// <param name="to">°C.</param>
    /// <param name="power">Heat put in, W.</param>
    public double? SecondsBetween(double from, double to, double power)
    {
        if (from == to)
        {
            return 0;
        }

        if (Loss <= 0)
        {
            var lossless = Capacity * (to - from) / power;
            return power != 0 && lossless > 0 ? lossless : null;
        }

        var settled = Room + (power / Loss);
        var ratio = (settled - from) / (settled - to);
        return ratio > 1 && double.IsFinite(ratio) ? Capacity / Loss * Math.Log(ratio) : null;
    }
}
