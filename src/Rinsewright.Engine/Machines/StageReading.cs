namespace Rinsewright.Engine.Machines;

/// <summary>Means over one stage of a run.</summary>
/// <param name="During">Which stage.</param>
/// <param name="Observables">
/// What could be read, in the order they are shown. Without racks there is nothing to read on ware, and of a rack; of a rinse or pump that did not run, no temperature or pressure.
/// </param>
public sealed record StageReading(ReadDuring During, IReadOnlyList<Observed> Observables)
{
    /// <summary>What was read of an observable; null where the machine does not have it.</summary>
    public Observed? Of(string id)
    {
        foreach (var observed in Observables)
        {
            if (observed.Observable.Id == id)
            {
                return observed;
            }
        }

        return null;
    }

    internal static StageReading Of(ReadDuring during, ModelParameters p, Meter meter)
    {
        var readout = new Readout();
        readout.Load(p, meter);
        if (during != ReadDuring.Load)
        {
            readout.Idle(meter);
        }

        return new StageReading(during, readout.InOrder());
    }
}
