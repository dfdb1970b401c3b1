using Deque.AxeCore.Commons;
using Microsoft.Playwright;
using Rinsewright.Contracts.Language;
using Rinsewright.Files.Demo;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>A page of the program as a person uses it. Everything the console complains of is kept.</summary>
public sealed class Screen
{
    private static readonly string Axe = new BundledAxeScriptProvider().GetScript();

    private Screen(IPage page, string address, string language)
    {
        Page = page;
        Address = address;
        Words = Words.For(language);
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                Complaints.Add(message.Text);
            }
        };
        page.PageError += (_, error) => Complaints.Add(error);
    }

    /// <summary>The page.</summary>
    public IPage Page { get; }

    /// <summary>Where the server is.</summary>
    public string Address { get; }

    /// <summary>Words on it.</summary>
    public Words Words { get; }

    /// <summary>Errors and warnings of the console.</summary>
    public List<string> Complaints { get; } = [];

    /// <summary>Opens a screen and waits until it can be used.</summary>
    public static async Task<Screen> OpenAsync(IBrowserContext context, string address, string path = "", string language = "en")
    {
        var page = await context.NewPageAsync();
        page.SetDefaultTimeout(120000);
        var screen = new Screen(page, address, language);
        await screen.GoAsync(path);
        return screen;
    }

    /// <summary>Goes to a screen by its address.</summary>
    public async Task GoAsync(string path)
    {
        await Page.GotoAsync(Address + path);
        await ReadyAsync();
    }

    /// <summary>Waits until the program shows.</summary>
    public Task ReadyAsync() => Page.Locator(".head h1").First.WaitForAsync();

    /// <summary>Waits until the service worker holds the page and everything it needs.</summary>
    public async Task KeptAsync()
    {
        await Page.EvaluateAsync("navigator.serviceWorker.ready.then(() => true)");
        await Page.WaitForFunctionAsync("() => !!navigator.serviceWorker.controller");
    }

    /// <summary>Waits until the device has written everything.</summary>
    public Task SavedAsync() => Assertions.Expect(Page.Locator(".saved .tickmark").First).ToHaveTextAsync("✓");

    /// <summary>Makes a kitchen on the list of kitchens; its page is shown then.</summary>
    public async Task NewKitchenAsync(string name)
    {
        await Page.FillAsync("#new-name", name);
        await Page.Locator("#new-kitchen button").ClickAsync();
    }

    /// <summary>Makes a machine of the kitchen that is shown; the machine's page is shown then.</summary>
    public async Task NewMachineAsync(string kind)
    {
        await Page.Locator("#machines .btn").ClickAsync();
        await Page.SelectOptionAsync("#machine-kind", kind);
        await Page.Locator("#new-machine button").ClickAsync();
        await Page.Locator("#begin-visit").WaitForAsync();
    }

    /// <summary>Begins a visit to the machine that is shown, and waits until it says how the machine stands.</summary>
    public async Task BeginVisitAsync()
    {
        await Page.Locator("#begin-visit").ClickAsync();
        await Page.Locator("#standing h2").WaitForAsync();
    }

    /// <summary>Gives a demo file through the file chooser.</summary>
    public async Task GiveAsync(string name, byte[]? bytes = null)
    {
        await Page.Locator(".drop input[type=file]")
            .First.SetInputFilesAsync(
                new FilePayload
                {
                    Name = name,
                    MimeType = "text/csv",
                    Buffer = bytes ?? DemoLoggers.Bytes(name),
                }
            );
        await Page.Locator(".passes label").First.WaitForAsync();
    }

    /// <summary>Opens a folded panel.</summary>
    public async Task UnfoldAsync(string id)
    {
        var fold = Page.Locator($"#{id}");
        if (await fold.GetAttributeAsync("open") is null)
        {
            await fold.Locator("> summary").ClickAsync();
        }
    }

    /// <summary>Waits for the verdict's words.</summary>
    public Task VerdictAsync(string outcome) => Assertions.Expect(Page.Locator("#verdict h2")).ToHaveTextAsync(Words["outcome." + outcome]);

    /// <summary>Nothing on this page may be wider than it.</summary>
    public async Task FitsAsync()
    {
        var over = await Page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(over <= 0, $"{Page.Url}: {over} px too wide");
    }

    /// <summary>Everything axe finds wrong with what is shown now, in all its rules. Nothing may be wider than the page either.</summary>
    public async Task<IReadOnlyList<string>> FindingsAsync(string where)
    {
        await FitsAsync();
        if (!await Page.EvaluateAsync<bool>("() => 'axe' in window"))
        {
            await Page.EvaluateAsync(Axe);
        }

        // Asked in the page itself: there are no frames in it, and the library's own way opens an empty page for each answer, for two seconds.
        var found = await Page.EvaluateAsync<string[]>(
            """
            async () => {
              const { violations, passes } = await axe.run(document, { resultTypes: ["violations"] });
              if (passes.length === 0) throw new Error("axe looked at nothing");
              return violations.map((v) => `${v.id}: ${v.nodes.slice(0, 3).map((n) => n.html).join(" | ")}`);
            }
            """
        );
        return [.. found.Select(f => $"{where}: {f}")];
    }

    /// <summary>The console stayed quiet.</summary>
    public void Quiet() => Assert.True(Complaints.Count == 0, string.Join('\n', Complaints));
}
