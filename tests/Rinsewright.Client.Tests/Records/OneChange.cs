using Rinsewright.Client.Records;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Tests.Records;

/// <summary>One change of the office, as a page of its own.</summary>
internal static class OneChange
{
    public static Task TakeOneOverAsync(this Work work, Change change, string? asSent = null) =>
        work.TakeOverAsync([(change, asSent)], "", "");
}
