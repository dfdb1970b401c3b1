using System.Text.Json;
using Microsoft.Playwright;
using Rinsewright.Client.Kitchens;
using Rinsewright.Client.Records;
using Rinsewright.Contracts.Records;
using Xunit;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>What lets a day with thousands of visits on the device show at once: the few visits that say how machines stand, and the day as it was read last.</summary>
[Collection("Browser")]
public sealed class DayKeptFlow(BrowserFixture fixture)
{
    /// <summary>Keeps the program of a page from starting until <see cref="LetStart"/>.</summary>
    internal const string HoldStart = """
        for (const name of ["instantiate", "instantiateStreaming"]) {
          const before = WebAssembly[name];
          WebAssembly[name] = async (...all) => { await new Promise((go) => (window.letStart ??= []).push(go)); return before(...all); };
        }
        """;

    /// <summary>Lets it start.</summary>
    internal const string LetStart =
        "() => { const go = () => { (window.letStart ?? []).splice(0).forEach((g) => g()); }; go(); setInterval(go, 50); }";

    private const string WriteAsBefore = """
        ([lines, documents]) => new Promise((done, fail) => {
          const request = indexedDB.open("rinsewright", 1);
          request.onerror = () => fail(request.error);
          request.onupgradeneeded = () => {
            const db = request.result;
            for (const name of ["docs", "list", "marks"]) db.createObjectStore(name, { keyPath: "id" });
            db.createObjectStore("outbox", { keyPath: "seq", autoIncrement: true }).createIndex("document", "documentId");
            db.createObjectStore("files", { keyPath: "sha256" });
          };
          request.onsuccess = () => {
            const db = request.result;
            const transaction = db.transaction(["docs", "list", "outbox"], "readwrite");
            for (const line of JSON.parse(lines)) transaction.objectStore("list").put(line);
            for (const doc of JSON.parse(documents)) transaction.objectStore("docs").put(doc);
            transaction.objectStore("outbox").add({ documentId: "one", sending: false, operation: { id: "one" } });
            transaction.oncomplete = () => { db.close(); done(); };
          };
        })
        """;

    /// <summary>Random visits of a few machines, some moved to another kitchen, some deleted, some not judged, in a store of the version before: the visits picked out say of every kitchen what all of them say.</summary>
    [Fact]
    public async Task The_last_visits_say_what_all_of_them_say()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var page = await context.NewPageAsync();
        await page.GotoAsync(server.Address + "js/first.js");
        var random = new Random(20261127);
        Guid[] kitchens = [.. Enumerable.Range(0, 4).Select(_ => Id(random))];
        Guid[] machines = [.. Enumerable.Range(0, 9).Select(_ => Id(random))];
        var lines = Enumerable.Range(0, 400).Select(i => Visit(random, i, kitchens, machines)).ToList();

        // Of every eighth visit the document tells of a part, which no line of that time did.
        var told = lines.Where((l, i) => i % 8 == 0 && l.Kitchen is not null).ToList();
        var documents = lines.Select(l => new
        {
            id = l.Id,
            json = JsonSerializer.Serialize(
                new
                {
                    fields = new Dictionary<string, object>
                    {
                        [told.Contains(l) ? "record.partsUsed" : "record.technician"] = new { value = Told(l.Id) },
                    },
                }
            ),
        });
        await page.EvaluateAsync(
            WriteAsBefore,
            new[] { JsonSerializer.Serialize([.. lines], ClientJson.Default.RecordLineArray), JsonSerializer.Serialize(documents) }
        );
        var owed = told.ToDictionary(l => l.Id, l => l.Kitchen!.Value);
        await SameAsync();
        Assert.Equal(1, await page.EvaluateAsync<int>("async () => await (await import('/js/store.js')).waiting()"));

        // Saved again with another outcome, and deleted: each in the transaction of its document.
        for (var i = 0; i < 60; i++)
        {
            var at = random.Next(lines.Count);
            owed.Remove(lines[at].Id);
            if (random.Next(3) == 0)
            {
                await page.EvaluateAsync("async (id) => await (await import('/js/store.js')).remove(id, null)", lines[at].Id.ToString());
                lines.RemoveAt(at);
            }
            else
            {
                lines[at] = Visit(random, 400 + i, kitchens, machines, lines[at].Id);
                await page.EvaluateAsync(
                    "async ([id, line]) => await (await import('/js/store.js')).save(id, JSON.stringify(JSON.parse(line)[0]), '{}', null)",
                    new[] { lines[at].Id.ToString(), JsonSerializer.Serialize([lines[at]], ClientJson.Default.RecordLineArray) }
                );
            }
        }

        await SameAsync();
        await DayLinesAsync();

        // A day has the kitchens where something is due or open, machines were left badly, or that are named; and of those machines what tells how they stand.
        async Task DayLinesAsync()
        {
            RecordLine[] places =
            [
                .. Enumerable
                    .Range(0, 40)
                    .Select(i => new RecordLine
                    {
                        Id = i < kitchens.Length ? kitchens[i] : Id(random),
                        Kind = Kinds.Kitchen,
                        Name = $"{i}",
                        NextVisit = random.Next(3) == 0 ? null : new DateOnly(2026, 12, random.Next(1, 31)),
                        Open = random.Next(8) == 0 ? 1 : 0,
                    }),
            ];
            foreach (var place in places)
            {
                await page.EvaluateAsync(
                    "async ([id, line]) => await (await import('/js/store.js')).save(id, JSON.stringify(JSON.parse(line)[0]), '{}', null)",
                    new[] { $"{place.Id}", JsonSerializer.Serialize([place], ClientJson.Default.RecordLineArray) }
                );
            }

            var named = places.First(p => p.Open == 0 && p.NextVisit is null && !kitchens.Contains(p.Id)).Id;
            var json = await page.EvaluateAsync<string[]>(
                "async (named) => await (await import('/js/store.js')).dayLines('2026-12-08', ['stopuse', 'notsanitary'], [named])",
                $"{named}"
            );
            var given = JsonSerializer.Deserialize(json[0], ClientJson.Default.RecordLineArray)!.Select(k => k.Id).ToHashSet();
            var visits = JsonSerializer.Deserialize(json[1], ClientJson.Default.RecordLineArray)!;
            var parts = JsonSerializer.Deserialize(json[2], ClientJson.Default.RecordLineArray)!;
            Assert.NotEmpty(parts);
            Assert.Equal(owed.Where(o => given.Contains(o.Value)).Select(o => o.Key).Order(), parts.Select(p => p.Id).Order());
            Assert.All(parts, p => Assert.Equal(Told(p.Id), p.Parts));
            Assert.All(kitchens, k => Assert.Equal(KitchenState.Of([], Of(lines, k)).Bad, KitchenState.Of([], Of(visits, k)).Bad));
            foreach (var place in places)
            {
                var bad = KitchenState.Of([], Of(lines, place.Id)).Bad.Count > 0;
                if (place.Open > 0 || place.NextVisit <= new DateOnly(2026, 12, 8) || bad || place.Id == named)
                {
                    Assert.Contains(place.Id, given);
                }
                else if (!kitchens.Contains(place.Id)) // of those visited more may be given
                {
                    Assert.DoesNotContain(place.Id, given);
                }
            }
        }

        async Task SameAsync()
        {
            var json = await page.EvaluateAsync<string>("async () => await (await import('/js/store.js')).lastVisits()");
            var lasts = JsonSerializer.Deserialize(json, ClientJson.Default.RecordLineArray)!;
            Assert.InRange(lasts.Length, machines.Length, lines.Count / 4);
            Assert.All(
                kitchens,
                k =>
                {
                    var (all, few) = (KitchenState.Of([], Of(lines, k)), KitchenState.Of([], Of(lasts, k)));
                    Assert.Equal((all.Worst, all.Last), (few.Worst, few.Last));
                    Assert.Equal(all.Bad, few.Bad);
                }
            );
        }

        static IEnumerable<RecordLine> Of(IEnumerable<RecordLine> visits, Guid kitchen) =>
            visits.Where(v => v.Kitchen == kitchen && !v.Deleted);
    }

    /// <summary>The day as it was read last stands there before the program has started, with its date and nothing that could change anything; it goes when the program's own is there, and with the office's copies.</summary>
    [Fact]
    public async Task The_day_stands_there_before_the_program_has_started()
    {
        await using var server = new LiveServer(demo: true);
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        var page = screen.Page;
        await screen.KeptAsync();
        await page.Locator("#kitchen-list a").Nth(5).WaitForAsync();
        await screen.GoAsync("day");
        await page.Locator("#due li").First.WaitForAsync();
        // The visit of 16 November ordered it and nobody has fitted it; Larkspur's curtain was fitted (docs/visits/history).
        await OwedAsync("#take");
        await page.WaitForFunctionAsync("() => localStorage.getItem('rinsewright.day')?.includes('Larkspur')");

        await page.AddInitScriptAsync(HoldStart);
        await page.ReloadAsync();
        await page.Locator("#first li", new() { HasText = "Larkspur Lodge" }).First.WaitForAsync();
        await Assertions.Expect(page.Locator("#first .notice")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#first button")).ToHaveCountAsync(0);
        Assert.Empty(await screen.FindingsAsync("as kept"));
        await OwedAsync("#first");

        await page.EvaluateAsync(LetStart);
        await page.Locator("#due li").First.WaitForAsync();
        await Assertions.Expect(page.Locator("#first")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator("#app")).ToBeVisibleAsync();

        await page.EvaluateAsync("async () => await (await import('/js/store.js')).forget()");
        Assert.Null(await page.EvaluateAsync<string?>("() => localStorage.getItem('rinsewright.day')"));

        async Task OwedAsync(string where)
        {
            var owed = page.Locator($"{where} li", new() { HasText = "1 × Element for the wash tank, 5 kW" });
            await Assertions.Expect(owed).ToContainTextAsync("Millrace Brewery; ordered on 16 Nov 2026, expected 23 Nov 2026");
            await Assertions.Expect(page.Locator($"{where} li", new() { HasText = "Long curtain" })).ToHaveCountAsync(0);
        }
    }

    /// <summary>What was written on another screen stands in it, though nobody has opened the day; what was read before somebody signed out is not kept after it.</summary>
    [Fact]
    public async Task What_is_written_elsewhere_stands_in_the_day_of_the_next_start()
    {
        await using var server = new LiveServer();
        await server.StartAsync();
        await using var context = await fixture.ContextAsync(BrowserFixture.Phone);
        var screen = await Screen.OpenAsync(context, server.Address, "kitchens");
        var page = screen.Page;
        await screen.NewKitchenAsync("Café Larkspur");
        await page.ClickAsync("#add-followUps");
        await page.Locator("#follow-ups input[type=text]").First.FillAsync("delime the booster");
        await page.Locator("#follow-ups input[type=date]").FillAsync("2026-01-05");
        await page.Locator("#follow-ups input[type=text]").Last.FillAsync("acid, goggles");
        await page.WaitForFunctionAsync("() => localStorage.getItem('rinsewright.day')?.includes('acid, goggles')");

        // A proof on the first screen, in a start that has opened no other.
        await screen.SavedAsync();
        await screen.GoAsync("proof");
        await page.GetByRole(AriaRole.Button, new() { Name = screen.Words["client.empty.type"] }).ClickAsync();
        await page.FillAsync("#kitchen", "Café Larkspur");
        await page.FillAsync("#final-rinse", "150");
        await screen.VerdictAsync("not-proven");
        await page.WaitForFunctionAsync(
            "(word) => JSON.parse(localStorage.getItem('rinsewright.day')).failed.some((f) => f.word === word)",
            screen.Words["outcome.not-proven"]
        );

        await page.AddInitScriptAsync(HoldStart);
        await page.GotoAsync(server.Address + "day");
        await Assertions.Expect(page.Locator("#first li").First).ToContainTextAsync("delime the booster");
        await Assertions.Expect(page.Locator("#first li").First).ToContainTextAsync(screen.Words["client.day.overdue"]);
        await page.EvaluateAsync(LetStart);
        await page.Locator("#due li").First.WaitForAsync();

        const string SignedOut = """
            async (before) => {
              const store = await import("/js/store.js");
              const round = store.dayRound();
              if (before) await store.forget();
              store.keepDay("read", round);
              return localStorage.getItem("rinsewright.day");
            }
            """;
        Assert.Equal("read", await page.EvaluateAsync<string?>(SignedOut, false));
        Assert.Null(await page.EvaluateAsync<string?>(SignedOut, true));
    }

    private static string Told(Guid visit) => $"[{{\"what\":\"{visit}\"}}]";

    private static RecordLine Visit(Random random, int minute, Guid[] kitchens, Guid[] machines, Guid? id = null)
    {
        var machine = random.Next(machines.Length);
        string[] standings = ["stopUse", "notSanitary", "watch", "sanitary", "notProved", "notProved", "", "judging"];
        return new()
        {
            Id = id ?? Id(random),
            Kind = Kinds.Visit,
            Name = $"Machine {machine}",
            About = standings[random.Next(standings.Length)],
            Machine = machines[machine],
            Kitchen = kitchens[random.Next(10) == 0 ? random.Next(kitchens.Length) : machine % kitchens.Length],
            At = new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero).AddMinutes(minute + (1000 * random.Next(500))),
            Deleted = random.Next(8) == 0,
        };
    }

    private static Guid Id(Random random)
    {
        var bytes = new byte[16];
        random.NextBytes(bytes);
        return new Guid(bytes);
    }
}
