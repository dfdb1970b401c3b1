using Xunit;

namespace Rinsewright.Tests.Shared;

/// <summary>For tests that look through the tree: a failure lists every finding whole, one a line.</summary>
internal static class Findings
{
    /// <summary>Fails when there is any.</summary>
    public static void None(IEnumerable<string> findings)
    {
        var all = findings.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        if (all.Count > 0)
        {
            Assert.Fail(string.Join('\n', all));
        }
    }
}
