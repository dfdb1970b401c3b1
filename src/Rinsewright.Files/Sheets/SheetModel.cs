using Rinsewright.Drawing;

namespace Rinsewright.Files.Sheets;

/// <summary>What a sheet says, before it is laid out: blocks in reading order. Tests read this; the printer only places it.</summary>
/// <param name="Title">Title of the document.</param>
/// <param name="Language">Language tag, for example <c>en-US</c>.</param>
/// <param name="Subject">One line for the document's properties.</param>
/// <param name="Author">Who made it.</param>
/// <param name="FootLeft">Machine and kitchen, on every page.</param>
/// <param name="FootMiddle">Date and time, on every page.</param>
/// <param name="PageOf">Template with <c>{page}</c> and <c>{pages}</c>.</param>
/// <param name="Blocks">The content.</param>
public sealed record SheetModel(
    string Title,
    string Language,
    string Subject,
    string Author,
    string FootLeft,
    string FootMiddle,
    string PageOf,
    IReadOnlyList<SheetBlock> Blocks
);

/// <summary>One block of a sheet.</summary>
public abstract record SheetBlock;

/// <summary>A heading; level 1 for the title.</summary>
public sealed record SheetHeading(int Level, string Text) : SheetBlock;

/// <summary>A paragraph; small for notes.</summary>
public sealed record SheetParagraph(string Text, bool Small = false, bool Bold = false) : SheetBlock;

/// <summary>The verdict: shape and word, one sentence, then each reason on its own line.</summary>
public sealed record SheetVerdict(StatusShape Shape, string Word, string Sentence, IReadOnlyList<string> Reasons) : SheetBlock;

/// <summary>Names and values, two pairs to a line.</summary>
public sealed record SheetFacts(string Summary, IReadOnlyList<(string Name, string Value)> Pairs) : SheetBlock;

/// <summary>A table. Shares: relative widths. A row never parts over two pages; the head is repeated.</summary>
public sealed record SheetTable(string Summary, IReadOnlyList<SheetColumn> Columns, IReadOnlyList<IReadOnlyList<SheetCell>> Rows)
    : SheetBlock;

/// <summary>A column.</summary>
public sealed record SheetColumn(string Head, double Share, bool Right = false);

/// <summary>A cell; with a status shape where it has one.</summary>
public sealed record SheetCell(string Text, StatusShape? Shape = null, bool Bold = false);

/// <summary>A drawing with its caption; the alternative text is the scene's own.</summary>
/// <param name="Scene">The drawing.</param>
/// <param name="Caption">What stands below it.</param>
/// <param name="Lower">The same drawing with less height, step by step: taken where it spares a page or keeps the signatures on an earlier one.</param>
public sealed record SheetFigure(Scene Scene, string Caption, IReadOnlyList<Scene>? Lower = null) : SheetBlock;

/// <summary>Photographs, two beside each other. None of them parts over two pages.</summary>
public sealed record SheetPhotos(IReadOnlyList<SheetPhoto> Photos) : SheetBlock;

/// <summary>A photograph.</summary>
/// <param name="Bytes">JPEG or PNG. What is neither is left out with its words in its place.</param>
/// <param name="Text">What stands below it; its alternative text as well.</param>
public sealed record SheetPhoto(ReadOnlyMemory<byte> Bytes, string Text);

/// <summary>A list of short sentences.</summary>
public sealed record SheetList(IReadOnlyList<string> Items) : SheetBlock;

/// <summary>What follows begins a page.</summary>
public sealed record SheetPageBreak : SheetBlock;

/// <summary>A word to be read from across the room, in a heavy frame. It is the title of its page.</summary>
public sealed record SheetBanner(string Text) : SheetBlock;

/// <summary>Lines to sign on.</summary>
public sealed record SheetSignatures(IReadOnlyList<string> Lines, string Name, string Date) : SheetBlock;
