using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Machines;
using Rinsewright.Drawing;
using Rinsewright.Engine.Machines;
using Rinsewright.Files.Labels;

namespace Rinsewright.Files.Sheets;

/// <summary>The sheet that hangs on a machine: its code, its name, and what nobody may forget before it. In both languages.</summary>
public static class LabelSheet
{
    private const double PageWidth = 640;

    /// <summary>Makes the sheet.</summary>
    /// <param name="id">Machine.</param>
    /// <param name="machine">Its description.</param>
    /// <param name="origin">Where the program is opened.</param>
    /// <param name="at">Moment it is made.</param>
    /// <param name="options">Paper and first language.</param>
    public static byte[] Make(Guid id, Machine machine, string origin, DateTimeOffset at, SheetOptions options) =>
        SheetPrinter.Print(For(id, machine, origin, at, options), options.Paper, at, id);

    /// <summary>Content of the sheet.</summary>
    public static SheetModel For(Guid id, Machine machine, string origin, DateTimeOffset at, SheetOptions options)
    {
        var words = Words.For(options.Language);
        var other = Words.For(Words.Languages.First(l => l != words.Language));
        var name = machine.Name ?? MachineWords.Kind(machine.Kind, words);
        var address = MachineCode.Address(origin, id);
        List<SheetBlock> blocks =
        [
            new SheetHeading(1, machine.Kitchen is { Length: > 0 } kitchen ? $"{name}, {kitchen}" : name),
            new SheetFigure(Centred(MachineCode.Draw(address, words["label.code"])), address),
            .. In(words, machine),
            .. In(other, machine),
        ];
        return new SheetModel(
            words["label.title"],
            words.Language == "es" ? "es-US" : "en-US",
            words.Say("label.subject", ("machine", name)),
            "",
            name,
            words.Day(DateOnly.FromDateTime(at.DateTime)),
            words["sheet.page"],
            blocks
        );
    }

    private static IEnumerable<SheetBlock> In(Words words, Machine machine)
    {
        yield return new SheetHeading(2, words["label.scan"]);
        yield return new SheetList([
            words.Say("label.kind", ("kind", MachineWords.Kind(machine.Kind, words))),
            words["label.hot"],
            words["label.chemicals"],
            words["label.wrong"],
        ]);
    }

    // As large as a hand, in the middle of the page.
    private static Scene Centred(Scene code)
    {
        var left = (PageWidth - code.Width) / 2;
        return new Scene(
            PageWidth,
            code.Height,
            code.Title,
            code.Description,
            [.. code.Marks.OfType<SceneBox>().Select(b => b with { X = b.X + left })],
            []
        );
    }
}
