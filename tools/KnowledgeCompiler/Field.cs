namespace Rinsewright.KnowledgeCompiler;

/// <summary>What a key holds.</summary>
internal enum Holds
{
    /// <summary>The item's own id.</summary>
    Id,

    /// <summary>A text that people read, with its Spanish.</summary>
    Text,

    /// <summary>A list of them.</summary>
    Texts,

    /// <summary>A word that is the same in both languages, or not for readers.</summary>
    Plain,

    /// <summary>A list of them.</summary>
    Plains,

    /// <summary>Ids of one or several things of a kind.</summary>
    Reference,

    /// <summary>A list of them; a single one may stand without brackets.</summary>
    References,

    /// <summary>A number.</summary>
    Number,

    /// <summary>true or false.</summary>
    Flag,

    /// <summary>Keys of another shape.</summary>
    Shape,

    /// <summary>A list of those.</summary>
    Shapes,

    /// <summary>Names with texts behind them.</summary>
    Map,

    /// <summary>Names with numbers behind them.</summary>
    Numbers,

    /// <summary>Names with lists behind them.</summary>
    Lists,

    /// <summary>Checked by a rule of its own; not carried into the program.</summary>
    Left,
}

/// <summary>A key of a shape.</summary>
/// <param name="Key">As written.</param>
/// <param name="Holds">What it holds.</param>
/// <param name="Of">Kind of thing referenced, name of the shape, or the words allowed with bars between.</param>
/// <param name="Needed">Whether it must be there.</param>
/// <param name="Spanish">Key of the Spanish beside it.</param>
/// <param name="As">Name in the program; null for the key itself.</param>
internal sealed record Field(string Key, Holds Holds, string? Of = null, bool Needed = true, string? Spanish = null, string? As = null)
{
    public Field May => this with { Needed = false };
}
