using System.Runtime.CompilerServices;

namespace Rinsewright.Client.Shell;

/// <summary>Waiting for what somebody else has started.</summary>
public static class Ending
{
    /// <summary>Waits until it is over; what went wrong in it is for those who started it.</summary>
    public static ConfiguredTaskAwaitable HoweverItEnds(this Task task) =>
        task.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing | ConfigureAwaitOptions.ContinueOnCapturedContext);
}
