using System.Net;
using System.Security.Cryptography;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;

namespace Rinsewright.Server.Tests.Records;

/// <summary>
/// A device at work while it synchronizes: proofs of its own, fields of kitchens, machines and visits that others write to as well, photographs and loggers' files. What waits is
/// sent, in the order it was saved, until the office has answered for it.
/// </summary>
internal sealed class SendingDevice(int number, IReadOnlyList<(Guid Id, string Kind)> shared)
{
    private const int MostAtOnce = 4;
    private const string Note = KitchenPaths.Note; // written each time, so that each operation writes something
    private static readonly string[] Standings = ["notProved", "watch", "sanitary"];
    private readonly Random random = new(number);
    private readonly Dictionary<Guid, FieldDocument> shown = shared.ToDictionary(d => d.Id, d => FieldDocument.Empty(d.Id, d.Kind));
    private readonly Queue<Operation> operations = new();
    private readonly Queue<string> files = new();
    private DateTimeOffset now = Invented.Morning;

    /// <summary>Everything saved here.</summary>
    public List<Operation> Saved { get; } = [];

    /// <summary>Bytes of every file kept here, by SHA-256.</summary>
    public Dictionary<string, byte[]> Files { get; } = [];

    /// <summary>Operations the office said it keeps.</summary>
    public List<Guid> Acknowledged { get; } = [];

    /// <summary>Files the office said it keeps.</summary>
    public List<string> AcknowledgedFiles { get; } = [];

    /// <summary>How often the office was gone while this waited for its answer to operations.</summary>
    public int CutOperations { get; private set; }

    /// <summary>How often the office has answered.</summary>
    public int Answers { get; private set; }

    /// <summary>Works and sends until the office is gone.</summary>
    public async Task WorkAsync(HttpClient client, CancellationToken over)
    {
        while (!over.IsCancellationRequested)
        {
            if (operations.Count == 0 && files.Count == 0)
            {
                for (var i = random.Next(1, 2 * MostAtOnce); i > 0; i--)
                {
                    Save();
                }
            }

            // What names a file goes before it or after it.
            var file = files.Count > 0 && (operations.Count == 0 || random.Next(2) == 0);
            try
            {
                await (file ? SendFileAsync(client) : SendOperationsAsync(client));
                Answers++;
            }
            catch (HttpRequestException)
            {
                CutOperations += file ? 0 : 1;
                return;
            }
        }
    }

    /// <summary>Sends all that waits, and saves nothing more.</summary>
    public async Task FinishAsync(HttpClient client)
    {
        while (operations.Count > 0)
        {
            await SendOperationsAsync(client);
        }

        while (files.Count > 0)
        {
            await SendFileAsync(client);
        }
    }

    private async Task SendOperationsAsync(HttpClient client)
    {
        var list = operations.Take(MostAtOnce).ToArray();
        foreach (var result in await client.SendAsync(list))
        {
            Assert.True(result.Outcome is "applied" or "superseded", result.Reason);
            Assert.Equal(operations.Dequeue().Id, result.Id);
            Acknowledged.Add(result.Id);
        }
    }

    private async Task SendFileAsync(HttpClient client)
    {
        using var body = new SlowBody(Files[files.Peek()]);
        using var answer = await client.PutAsync(
            new Uri("api/files/" + files.Peek(), UriKind.Relative),
            body,
            TestContext.Current.CancellationToken
        );
        Assert.True(answer.StatusCode is HttpStatusCode.Created or HttpStatusCode.OK, answer.StatusCode.ToString());
        AcknowledgedFiles.Add(files.Dequeue());
    }

    private void Save()
    {
        now += TimeSpan.FromSeconds(random.Next(3)); // the clocks of all run alike, so that some write at the same time
        var (id, kind) = random.Next(5) == 0 ? (Guid.CreateVersion7(), Kinds.Proof) : shared[random.Next(shared.Count)];
        var operation = kind == Kinds.Proof ? Proof(id) : Fields(id, kind);
        Saved.Add(operation);
        operations.Enqueue(operation);
    }

    private Operation Proof(Guid id)
    {
        var put = Invented.Put(id, at: now, device: $"phone {number}");
        return random.Next(4) > 0 ? put : put with { Proof = put.Proof! with { Files = [new FileReference(Keep(), "plate.csv", 1)] } };
    }

    private Operation Fields(Guid id, string kind)
    {
        var text = $"{Saved.Count} of {number}";
        (string Path, string Value)[] changes = kind switch
        {
            Kinds.Kitchen => [(KitchenPaths.Name, text), (KitchenPaths.Hours, text), ("water.a1.hardness", $"{random.Next(20)} gpg")],
            Kinds.Machine =>
            [
                (MachinePaths.Kitchen, shared[0].Id.ToString()),
                (MachinePaths.Name, text),
                ($"readings.{random.Next(3)}", $$"""{"note":"{{text}}"}"""),
                .. random.Next(4) > 0 ? Array.Empty<(string, string)>() : [(MachinePaths.Photograph, Keep())],
            ],
            _ =>
            [
                (VisitPaths.Kitchen, shared[0].Id.ToString()),
                (VisitPaths.Standing, Standings[random.Next(3)]),
                (VisitPaths.Record + "complaint", $"\"{text}\""),
                .. random.Next(4) > 0
                    ? Array.Empty<(string, string)>()
                    : [(VisitPaths.Record + "photos", $$"""[{"sha256":"{{Keep()}}","moment":"asFound"}]""")],
            ],
        };
        var operation = shown[id]
            .Write(
                Guid.CreateVersion7(),
                changes
                    .Where(c => Names(c.Path) || random.Next(3) > 0)
                    .Append((Note, text))
                    .Select(c => KeyValuePair.Create(c.Item1, c.Item2)),
                "Ines Calloway",
                $"phone {number}",
                now
            )!;
        shown[id] = shown[id].With(operation);
        return operation;
    }

    private static bool Names(string path) => path is MachinePaths.Photograph or VisitPaths.Record + "photos";

    private string Keep()
    {
        var bytes = new byte[random.Next(1, 200_000)];
        random.NextBytes(bytes);
        var sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes));
        Files[sha256] = bytes;
        files.Enqueue(sha256);
        return sha256;
    }

    // As over a poor line, so that an office that dies over a file mostly has a part of it.
    private sealed class SlowBody(byte[] bytes) : HttpContent
    {
        private const int AtOnce = 16_384;

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            for (var at = 0; at < bytes.Length; at += AtOnce)
            {
                await stream.WriteAsync(bytes.AsMemory(at, Math.Min(AtOnce, bytes.Length - at)));
                await stream.FlushAsync();
                await Task.Delay(1);
            }
        }

        protected override bool TryComputeLength(out long length)
        {
            length = bytes.Length;
            return true;
        }
    }
}
