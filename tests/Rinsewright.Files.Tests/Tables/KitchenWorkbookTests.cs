using System.Text;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;
using Rinsewright.Files.Tables;
using Rinsewright.Files.Tests.Loggers;
using Xunit;

namespace Rinsewright.Files.Tests.Tables;

/// <summary>Kitchens from files as people keep them: workbooks, other encodings, and what is no table. Invented; the workbook is written by hand, by nothing that reads it.</summary>
public sealed class KitchenWorkbookTests
{
    private static readonly Dictionary<string, Guid> Nobody = new(StringComparer.Ordinal);

    private static TablePreview Read(byte[] file) => KitchenTable.Read(file, Nobody, TestContext.Current.CancellationToken);

    [Fact]
    public void The_sheet_that_names_kitchens_is_taken_wherever_it_lies()
    {
        var preview = Read(
            WorkbookTests.Book([
                (
                    "Notes",
                    [
                        ["to do"],
                        ["call the office"],
                    ]
                ),
                (
                    "Places",
                    [
                        ["Kitchen", "Address", "Next visit", "Machine", "Machine kind"],
                        ["Larkspur Lodge", "12 Ridge Road", "2027-03-04", "Banquet", "flight"],
                        ["", "", "", "", ""],
                        ["Tin Bell Diner", "4 Main Street", "someday", "", "dishwasher"],
                    ]
                ),
            ])
        );

        Assert.Equal(["Larkspur Lodge", "Tin Bell Diner"], preview.Kitchens.Select(k => k.Name));
        Assert.Equal(("Banquet", MachineKind.Flight), preview.Kitchens[0].Machines.Select(m => (m.Name, m.Kind)).Single());
        Assert.Equal("2027-03-04", preview.Kitchens[0].Fields.Single(f => f.Key == KitchenPaths.NextVisit).Value);
        // Rows are named by the numbers the workbook gives them, the empty one counted.
        Assert.Equal(
            [(4, "client.table.day", "someday"), (4, "client.table.kind", "dishwasher")],
            preview.Problems.Select(p => (p.Row, p.Key, p.Value))
        );
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-8")]
    [InlineData("latin1")]
    public void Text_in_other_encodings_keeps_its_letters(string encoding)
    {
        var bytes = Encoding.GetEncoding(encoding) is var e
            ? (byte[])[.. e.GetPreamble(), .. e.GetBytes("cocina;dirección\r\nCafé Niño;Peña 4\r\n")]
            : [];
        var preview = Read(bytes);

        Assert.Equal("Café Niño", preview.Kitchens.Single().Name);
        Assert.Equal("Peña 4", preview.Kitchens.Single().Fields.Single(f => f.Key == KitchenPaths.Address).Value);
    }

    [Fact]
    public void What_is_no_table_is_said()
    {
        Assert.Equal("files.refused-picture", Read([0xFF, 0xD8, 0xFF, 0xE0, 0, 16]).Problems.Single().Key);
        Assert.Equal("files.workbook-damaged", Read([.. "PK\u0003\u0004"u8, 1, 2, 3, 4, 5, 6]).Problems.Single().Key);
        Assert.Equal("client.table.empty", Read([]).Problems.Single().Key);
        Assert.Equal("client.table.empty", Read(WorkbookTests.Book([("Empty", [])])).Problems.Single().Key);
    }
}
