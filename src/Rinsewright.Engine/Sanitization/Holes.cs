using System.Runtime.InteropServices;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>Walks the marks of a trace beside its samples and tells which intervals carry no evidence.</summary>
internal sealed class Holes
{
    private readonly TraceMark[] marks;
    private int next;

    public Holes(IReadOnlyList<TraceMark> marks, int first)
    {
        this.marks = marks.Count == 0 ? [] : [.. marks.Where(m => m.BreaksEvidence)];
        while (next < this.marks.Length && this.marks[next].First + this.marks[next].Count < first)
        {
            next++;
        }
    }

    /// <summary>Whether the trace has any such stretch at all.</summary>
    public bool Any => marks.Length > 0;

    /// <summary>Whether the interval from sample <paramref name="i"/> to the next one is a hole or touches a suspect sample. Ask in rising order.</summary>
    public bool Between(int i)
    {
        while (next < marks.Length && marks[next].First + marks[next].Count <= i)
        {
            if (marks[next].Count == 0 && marks[next].First > i)
            {
                break;
            }

            next++;
        }

        for (var m = next; m < marks.Length && marks[m].First <= i + 1; m++)
        {
            var mark = marks[m];
            if (mark.Count == 0 ? mark.First == i + 1 : i + 1 >= mark.First && i < mark.First + mark.Count)
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>Logged values to °F or °C as one multiplication and one addition.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct Scale
{
    private readonly double factor;
    private readonly double offsetF;
    private readonly double offsetC;

    public Scale(Unit unit)
    {
        factor = unit.ToSI(1) - unit.ToSI(0);
        offsetF = Units.Fahrenheit.FromSI(unit.ToSI(0));
        offsetC = Units.Celsius.FromSI(unit.ToSI(0));
        identityF = unit == Units.Fahrenheit;
        identityC = unit == Units.Celsius;
    }

    private readonly bool identityF;
    private readonly bool identityC;

    public double ToFahrenheit(double logged) => identityF ? logged : (logged * factor * 1.8) + offsetF;

    public double ToCelsius(double logged) => identityC ? logged : (logged * factor) + offsetC;

    /// <summary>A difference in °C as the unit logs it.</summary>
    public double DifferenceFromCelsius(double celsius) => celsius / factor;
}
