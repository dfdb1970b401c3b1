namespace Rinsewright.Engine.Machines;

// What was read as plain numbers, for tables of many machines.
internal sealed partial class Readout
{
    private static readonly Dictionary<Observable, int> Places = Enumerable
        .Range(0, Observables.All.Count)
        .ToDictionary(k => Observables.All[k], k => k, (IEqualityComparer<Observable>)ReferenceEqualityComparer.Instance);

    /// <summary>Place of an observable among <see cref="Observables.All"/>.</summary>
    public static int PlaceOf(Observable observable) => Places[observable];

    /// <summary>Writes each value into the row of its observable.</summary>
    public void WriteTo(double[][] rows, int column)
    {
        foreach (var observed in read)
        {
            if (observed.Value is { } value)
            {
                rows[PlaceOf(observed.Observable)][column] = value.Value;
            }
        }
    }
}
