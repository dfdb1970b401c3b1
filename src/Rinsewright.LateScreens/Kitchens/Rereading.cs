using Rinsewright.Client.Records;

namespace Rinsewright.Client.Kitchens;

/// <summary>Reads what a screen shows one at a time: asked for while one reading runs, it runs once more after it; not because the office was asked meanwhile and nothing came.</summary>
/// <param name="synchronizer">Says what came.</param>
/// <param name="read">Reads.</param>
public sealed class Rereading(Synchronizer synchronizer, Func<Task> read)
{
    private bool reading;
    private bool again;
    private int seen;

    /// <summary>Reads.</summary>
    public async Task ReadAsync()
    {
        if (reading)
        {
            again = true;
            return;
        }

        reading = true;
        try
        {
            do
            {
                again = false;
                seen = synchronizer.Arrived;
                await read();
            } while (again);
        }
        finally
        {
            reading = false;
        }
    }

    /// <summary>After the office was asked: reads again. Another tab may have fetched, or this one written without a signal; only what is being read now and what came before it began needs no second reading.</summary>
    /// <returns>Whether it read.</returns>
    public async Task<bool> AskedAsync()
    {
        if (synchronizer.Busy || (reading && seen == synchronizer.Arrived))
        {
            return false;
        }

        await ReadAsync();
        return true;
    }
}
