using Rinsewright.Drawing;
using Rinsewright.Engine.Machines;
using Rinsewright.Files.Labels;
using Rinsewright.Files.Sheets;
using Xunit;

namespace Rinsewright.Files.Tests.Labels;

/// <summary>Codes on machines: drawn, seen by a camera, read again.</summary>
public sealed class MachineCodeTests
{
    private static readonly Guid Machine = Guid.Parse("01a21932-d2ec-7478-b8ba-70dc524172da");

    [Theory]
    [InlineData("http://127.0.0.1:5230/")]
    [InlineData("https://dish.example.org")]
    public void What_is_drawn_is_read_again(string origin)
    {
        var address = MachineCode.Address(origin, Machine);
        var (grey, size) = Photograph(MachineCode.Draw(address, ""), pixels: 2, noise: 0);

        Assert.Equal(address, MachineCode.Read(grey, size, size));
        Assert.Equal(Machine, MachineCode.MachineOf(address));
    }

    [Fact]
    public void A_soiled_label_in_poor_light_is_still_read()
    {
        var address = MachineCode.Address("https://dish.example.org", Machine);
        var (grey, size) = Photograph(MachineCode.Draw(address, ""), pixels: 2, noise: 40);
        // A splash over a corner of the data, away from the three finders.
        for (var y = size * 6 / 10; y < size * 7 / 10; y++)
        {
            for (var x = size * 6 / 10; x < size * 7 / 10; x++)
            {
                grey[(y * size) + x] = 200;
            }
        }

        Assert.Equal(address, MachineCode.Read(grey, size, size));
    }

    [Fact]
    public void An_empty_picture_has_no_code() => Assert.Null(MachineCode.Read([.. Enumerable.Repeat((byte)255, 10_000)], 100, 100));

    [Fact]
    public void A_picture_of_the_wrong_size_is_refused() =>
        Assert.Contains(
            "10000",
            Assert.Throws<ArgumentException>(() => MachineCode.Read(new byte[5], 100, 100)).Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("https://example.org/menu")]
    [InlineData("https://example.org/machine/soap")]
    [InlineData("machine/01a21932-d2ec-7478-b8ba-70dc524172da")]
    public void Another_code_names_no_machine(string? text) => Assert.Null(MachineCode.MachineOf(text));

    [Theory]
    [InlineData("en")]
    [InlineData("es")]
    public void The_sheet_says_the_same_in_both_languages_and_carries_the_code(string language)
    {
        var machine = TypicalMachines.Of(MachineKind.DoorHotWater) with { Name = "Door 1", Kitchen = "Larkspur Lodge" };
        var model = LabelSheet.For(
            Machine,
            machine,
            "https://dish.example.org/",
            DateTimeOffset.UnixEpoch,
            new SheetOptions(Language: language)
        );

        Assert.Equal("Door 1, Larkspur Lodge", Assert.IsType<SheetHeading>(model.Blocks[0]).Text);
        Assert.Equal("https://dish.example.org/machine/" + Machine, Assert.Single(model.Blocks.OfType<SheetFigure>()).Caption);
        var lists = model.Blocks.OfType<SheetList>().ToList();
        Assert.Equal(2, lists.Count);
        Assert.All(lists, l => Assert.Equal(4, l.Items.Count));
        Assert.NotEqual(lists[0].Items[1], lists[1].Items[1]);
        Assert.NotEmpty(
            LabelSheet.Make(Machine, machine, "https://dish.example.org/", DateTimeOffset.UnixEpoch, new SheetOptions(Language: language))
        );
    }

    // As a camera sees it: paper not white, ink not black, and grain.
    private static (byte[] Grey, int Size) Photograph(Scene code, int pixels, int noise)
    {
        var size = (int)code.Width * pixels;
        var random = new Random(7);
        var grey = new byte[size * size];
        for (var i = 0; i < grey.Length; i++)
        {
            grey[i] = (byte)Math.Clamp(215 + random.Next(-noise, noise + 1), 0, 255);
        }

        foreach (var box in code.Marks.Cast<SceneBox>())
        {
            for (var y = (int)(box.Y * pixels); y < (box.Y + box.Height) * pixels; y++)
            {
                for (var x = (int)(box.X * pixels); x < (box.X + box.Width) * pixels; x++)
                {
                    grey[(y * size) + x] = (byte)Math.Clamp(45 + random.Next(-noise, noise + 1), 0, 255);
                }
            }
        }

        return (grey, size);
    }
}
