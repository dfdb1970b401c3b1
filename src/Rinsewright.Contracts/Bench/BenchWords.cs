using Rinsewright.Contracts.Language;

namespace Rinsewright.Contracts.Bench;

/// <summary>Words of the Bench that screens and the command line share.</summary>
public static class BenchWords
{
    /// <summary>Where an equation comes from: in words where it is no key of the list of sources.</summary>
    public static string Source(Words words, string source)
    {
        var key = "bench.source." + source.ToLowerInvariant().Replace(' ', '-');
        var said = words[key];
        return said == $"[{key}]" ? source : said;
    }
}
