using Xunit;

namespace Rinsewright.Engine.Tests.Sanitization;

public class PublishedFilesTests
{
    private static readonly string[] Header = ["quantity", "source", "locator", "units", "range", "uncertainty", "transcribed", "rights"];

    public static TheoryData<string> Files() =>
        [
            .. Directory
                .GetFiles(AppContext.BaseDirectory, "*.csv", SearchOption.AllDirectories)
                .Where(f => f.Contains("Published", StringComparison.Ordinal))
                .Select(f => Path.GetRelativePath(AppContext.BaseDirectory, f)),
        ];

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_published_file_opens_with_its_own_source(string file)
    {
        var head = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, file))
            .TakeWhile(l => l.StartsWith('#'))
            .Select(l => l[1..].TrimStart().Split(' ')[0])
            .ToList();
        Assert.Equal(Header, head);
    }
}
