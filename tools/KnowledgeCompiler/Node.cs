using System.Globalization;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Rinsewright.KnowledgeCompiler;

/// <summary>A place in a file: a scalar, a list, or keys with values; with its line, so that a problem can be found.</summary>
internal sealed class Node
{
    private Node(string file, long line)
    {
        File = file;
        Line = line;
    }

    public string File { get; }

    public long Line { get; }

    /// <summary>Text of a scalar; null for a list or keys.</summary>
    public string? Scalar { get; private init; }

    /// <summary>Whether the scalar was written with quotes.</summary>
    public bool Quoted { get; private init; }

    public IReadOnlyList<Node>? Items { get; private init; }

    public IReadOnlyDictionary<string, Node>? Keys { get; private init; }

    /// <summary>Id of the item; its line where it has none.</summary>
    public string Name => Text("id") ?? string.Create(CultureInfo.InvariantCulture, $"line {Line}");

    public Node? this[string key] => Keys?.GetValueOrDefault(key);

    public string? Text(string key) => this[key]?.Scalar;

    /// <summary>Texts of a list, or the one text where it is a scalar; empty where the key is missing.</summary>
    public IReadOnlyList<string> Texts(string key) =>
        this[key] is not { } node ? []
        : node.Scalar is { } one ? [one]
        : [.. (node.Items ?? []).Select(i => i.Scalar).OfType<string>()];

    /// <summary>Items of a list of items; empty where the key is missing or something else.</summary>
    public IReadOnlyList<Node> List(string key) => this[key]?.Items ?? [];

    public double? Number(string key) =>
        double.TryParse(Text(key), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    /// <summary>Reads a file.</summary>
    /// <exception cref="YamlException">It is not YAML.</exception>
    public static Node Parse(string file, string text)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(text));
        return stream.Documents.Count == 0
            ? new Node(file, 1) { Keys = new Dictionary<string, Node>(StringComparer.Ordinal) }
            : Of(file, stream.Documents[0].RootNode);
    }

    private static Node Of(string file, YamlNode node) =>
        node switch
        {
            YamlScalarNode s => new Node(file, node.Start.Line)
            {
                Scalar = s.Value ?? "",
                Quoted = s.Style is ScalarStyle.SingleQuoted or ScalarStyle.DoubleQuoted,
            },
            YamlSequenceNode q => new Node(file, node.Start.Line) { Items = [.. q.Children.Select(c => Of(file, c))] },
            YamlMappingNode m => new Node(file, node.Start.Line)
            {
                Keys = m.Children.ToDictionary(c => ((YamlScalarNode)c.Key).Value ?? "", c => Of(file, c.Value), StringComparer.Ordinal),
            },
            _ => new Node(file, node.Start.Line),
        };
}

/// <summary>Something wrong with the knowledge.</summary>
/// <param name="Rule">Name of the rule, as the README of the knowledge lists it.</param>
/// <param name="File">File.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Says">What, and how to mend it.</param>
internal sealed record Problem(string Rule, string File, long Line, string Says)
{
    public Problem(string rule, Node at, string says)
        : this(rule, at.File, at.Line, says) { }

    /// <summary>As build tools read it.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{File}.yaml({Line}): error {Rule}: {Says}");
}
