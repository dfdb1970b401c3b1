using YamlDotNet.Core;

namespace Rinsewright.KnowledgeCompiler;

/// <summary>The knowledge as written: every file with its text, and what is found to be wrong with it.</summary>
internal sealed class KnowledgeText
{
    private readonly Dictionary<string, Node> files;
    private readonly List<Problem> problems;

    /// <summary>Reads files by their name without ending.</summary>
    public KnowledgeText(IReadOnlyDictionary<string, string> texts)
        : this(new Dictionary<string, Node>(StringComparer.Ordinal), [])
    {
        foreach (var name in Schema.Files.Select(f => f.File).Append("diagnosis-cases"))
        {
            if (!texts.TryGetValue(name, out var text))
            {
                problems.Add(new Problem("yaml", name, 1, "this file is missing from the folder of the knowledge"));
                continue;
            }

            Parse(name, text);
        }
    }

    private KnowledgeText(IReadOnlyDictionary<string, Node> files, List<Problem> problems)
    {
        this.files = new(files, StringComparer.Ordinal);
        this.problems = problems;
    }

    public Node? this[string file] => files.GetValueOrDefault(file);

    /// <summary>Reads a folder.</summary>
    public static KnowledgeText Read(string folder) =>
        new(
            Directory
                .EnumerateFiles(folder, "*.yaml")
                .ToDictionary(f => Path.GetFileNameWithoutExtension(f), File.ReadAllText, StringComparer.Ordinal)
        );

    /// <summary>The same with another text for one file; the others are not read again.</summary>
    public KnowledgeText With(string file, string text)
    {
        var changed = new KnowledgeText(files, [.. problems.Where(p => p.File != file)]);
        changed.files.Remove(file);
        changed.Parse(file, text);
        return changed;
    }

    /// <summary>Items of a list of a file; empty where either is missing.</summary>
    public IReadOnlyList<Node> List(string file, string list) => this[file]?.List(list) ?? [];

    /// <summary>Everything wrong with it; empty where it can be compiled.</summary>
    public IReadOnlyList<Problem> Check()
    {
        if (problems.Count > 0)
        {
            return problems;
        }

        var known = new KnownIds(this);
        var shapes = new ShapeRules(known);
        var found = files.SelectMany(f => shapes.Check(Schema.Shapes[f.Key], f.Value)).Concat(known.Problems).ToList();

        // What a file lacks would only be said again by the rules that read it.
        return found.Count > 0
            ? found
            : [.. FaultRules.Check(this), .. AnatomyRules.Check(this), .. SafetyRules.Check(this), .. WareRules.Check(this)];
    }

    private void Parse(string name, string text)
    {
        try
        {
            files.Add(name, Node.Parse(name, text));
        }
        catch (Exception e) when (e is YamlException or ArgumentException)
        {
            problems.Add(new Problem("yaml", name, (e as YamlException)?.Start.Line ?? 1, $"not YAML: {e.Message}"));
        }
    }
}
