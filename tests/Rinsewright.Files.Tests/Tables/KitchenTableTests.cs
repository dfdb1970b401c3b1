using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;
using Rinsewright.Files.Tables;
using Xunit;

namespace Rinsewright.Files.Tests.Tables;

/// <summary>Tables of kitchens and machines: what can be read is shown, what cannot is named with its row, nothing is guessed. Invented tables.</summary>
public sealed class KitchenTableTests
{
    private static readonly Dictionary<string, Guid> Nobody = new(StringComparer.Ordinal);

    [Theory]
    [InlineData(',')]
    [InlineData(';')]
    [InlineData('\t')]
    public void One_row_a_machine_and_the_kitchen_once(char s)
    {
        var text =
            $"\ufeffKitchen{s}Address{s}Machine{s}Machine kind\r\n\"Larkspur {s} \"\"Lodge\"\"\"{s}\"12 Ridge Road\nrear door\"{s}Banquet{s}rack-conveyor-two-tank\r\n"
            + $"\"Larkspur {s} \"\"Lodge\"\"\"{s}{s}{s}flight\r\nTin Bell Diner{s}4 Main Street\r\n";
        var preview = KitchenTable.Read(text, Nobody);
        Assert.Empty(preview.Problems);
        Assert.Equal([$"Larkspur {s} \"Lodge\"", "Tin Bell Diner"], preview.Kitchens.Select(k => k.Name));
        Assert.Equal("12 Ridge Road\nrear door", preview.Kitchens[0].Fields.Single(f => f.Key == KitchenPaths.Address).Value);
        Assert.Equal(
            [("Banquet", MachineKind.RackConveyorTwoTank), ("", MachineKind.Flight)],
            preview.Kitchens[0].Machines.Select(m => (m.Name, m.Kind))
        );
        Assert.Empty(preview.Kitchens[1].Machines);
    }

    [Fact]
    public void Each_row_that_cannot_be_is_named_and_the_others_are_taken()
    {
        var text =
            "cocina,dirección,próxima visita,máquina,tipo de máquina,color\n"
            + "Larkspur Lodge,12 Ridge Road,2027-03-04,A,flight,red\n"
            + ",nowhere,,,,\n"
            + "LARKSPUR  LODGE,14 Ridge Road,,B,dishwasher,\n"
            + "Tin Bell Diner,,3/4/2027,,,\n";
        var preview = KitchenTable.Read(
            text,
            new Dictionary<string, Guid> { ["Tin Bell diner"] = new("01993a00-0001-7000-8000-7a6d617261c1") }
        );
        Assert.Equal(
            [
                (1, "client.table.column", "color"),
                (3, "client.table.row-without-kitchen", " | nowhere |  |  |  | "),
                (4, "client.table.says-otherwise", "14 Ridge Road"),
                (4, "client.table.kind", "dishwasher"),
                (5, "client.table.day", "3/4/2027"),
            ],
            preview.Problems.Select(p => (p.Row, p.Key, p.Value))
        );
        Assert.Equal(["Larkspur Lodge", "Tin Bell Diner"], preview.Kitchens.Select(k => k.Name));
        Assert.Equal([false, true], preview.Kitchens.Select(k => k.Known));
        Assert.Equal(new Guid("01993a00-0001-7000-8000-7a6d617261c1"), preview.Kitchens[1].Id);
    }

    [Theory]
    [InlineData("", "client.table.empty")]
    [InlineData("name,street\nLarkspur,12", "client.table.column")]
    public void A_table_of_something_else_says_so(string text, string key)
    {
        var preview = KitchenTable.Read(text, Nobody);
        Assert.Empty(preview.Kitchens);
        Assert.Contains(preview.Problems, p => p.Key == key);
    }

    [Fact]
    public void What_is_written_is_read_back_and_taking_it_twice_makes_nothing_twice()
    {
        var kitchen = FieldDocument.Empty(Guid.CreateVersion7(), Kinds.Kitchen);
        kitchen = kitchen.With(
            kitchen.Write(
                Guid.CreateVersion7(),
                [
                    new(KitchenPaths.Name, "Millrace, the \"brewery\""),
                    new(KitchenPaths.Note, "=1+1\nsteps"),
                    new(KitchenPaths.Key, "Odile"),
                ],
                "Ines Calloway",
                "phone",
                new DateTimeOffset(2026, 11, 20, 9, 0, 0, TimeSpan.Zero)
            )!
        );
        var text = KitchenTable.Write([(kitchen, [("Door", "door-hot-water"), ("", "flight")])]);
        var once = Assert.Single(KitchenTable.Read(text, Nobody).Kitchens);
        var twice = Assert.Single(KitchenTable.Read(text + text[(text.IndexOf('\n', StringComparison.Ordinal) + 1)..], Nobody).Kitchens);
        Assert.Equal("Millrace, the \"brewery\"", once.Name);
        Assert.Equal("'=1+1\nsteps", once.Fields.Single(f => f.Key == KitchenPaths.Note).Value); // never a formula in somebody's spreadsheet
        Assert.Equal(once.Machines.Select(m => m.Id), twice.Machines.Select(m => m.Id));
        Assert.Equal((once.Id, 2), (twice.Id, once.Machines.Count));
    }
}
