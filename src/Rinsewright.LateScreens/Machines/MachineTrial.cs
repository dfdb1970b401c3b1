using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Client.Machines;

/// <summary>Changes of a what-if.</summary>
/// <param name="RacksPerHour">Racks an hour.</param>
/// <param name="Figures">Figures changed, by knob.</param>
/// <param name="CurtainOut">The curtain between wash and pumped rinse is out.</param>
public sealed record MachineTrial(double RacksPerHour, IReadOnlyDictionary<string, Amount> Figures, bool CurtainOut)
{
    /// <summary>Fault that stands for the curtain.</summary>
    public const string Curtain = "curtain-missing";

    /// <summary>Nothing changed.</summary>
    public static MachineTrial None(double racks) => new(racks, new Dictionary<string, Amount>(StringComparer.Ordinal), false);

    /// <summary>With one figure changed.</summary>
    public MachineTrial With(string knob, Amount value) =>
        this with
        {
            Figures = new Dictionary<string, Amount>(Figures, StringComparer.Ordinal) { [knob] = value },
        };

    /// <summary>The machine changed, in use.</summary>
    public Situation On(Machine machine)
    {
        var changed = machine;
        foreach (var knob in Knob.All)
        {
            changed = Figures.TryGetValue(knob.Id, out var value) ? knob.Set(changed, value) : changed;
        }

        return new Situation(changed, RacksPerHour, CurtainOut ? [MachineFaults.Find(Curtain)!.At(1)] : []);
    }
}

/// <summary>What the drawing shows of the model.</summary>
/// <param name="Reading">Reading; null while there is none.</param>
/// <param name="Fault">Fault shown on its part; null for none.</param>
public sealed record ModelView(SteadyReading? Reading, string? Fault = null);
