using Xunit;

namespace Rinsewright.Client.Tests.Records;

/// <summary>What comes about after a while.</summary>
internal static class Soon
{
    public static Task UntilAsync(Func<bool> holds) => UntilAsync(() => Task.FromResult(holds()));

    public static async Task UntilAsync(Func<Task<bool>> holds)
    {
        for (var i = 0; !await holds(); i++)
        {
            Assert.True(i < 500, "It never came about.");
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }
    }
}
