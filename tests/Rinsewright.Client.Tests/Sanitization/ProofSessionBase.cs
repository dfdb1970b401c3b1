using Rinsewright.Client.Records;
using Rinsewright.Client.Sanitization;
using Rinsewright.Client.Shell;
using Rinsewright.Client.Tests.Records;

namespace Rinsewright.Client.Tests.Sanitization;

/// <summary>A proof on the screen of a device in memory; the engine is the real one.</summary>
public abstract class ProofSessionBase
{
    private protected ProofSessionBase()
    {
        work = new Work(store, preferences, TimeProvider.System);
        session = NewSession();
    }

    private protected readonly MemoryStore store = new();
    private protected readonly MemoryComputing computing = new();
    private protected readonly Preferences preferences = new(new MemoryDevice());
    private protected readonly TaskCompletionSource held = new();
    private protected readonly Work work;
    private protected readonly ProofSession session;

    private protected ProofSession NewSession() => new(computing, work, preferences, TimeProvider.System);

    private protected Task RunningAsync() => Soon.UntilAsync(() => session.Running);
}
