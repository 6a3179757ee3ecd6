using ReedClinic.Circuits;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Browser.Tests.Load;

/// <summary>Many open benches, each on a reed of its own, where something is said every now and then, spread out.</summary>
internal sealed class OtherTabs : IAsyncDisposable
{
    private const int Shortest = 20_000;
    private const int Longest = 30_000;

    private static readonly string[] Lines = ["c-25", "dust the tip", "c-20", "low notes speak", "thin the corners", "c-15", "hard to blow", "open the windows", "c-10", "blend"];

    private readonly CancellationTokenSource _enough = new();
    private readonly List<OtherTab> _tabs = [];
    private readonly List<Task> _work = [];
    private int _said;

    /// <summary>How many there are.</summary>
    public int Count => _tabs.Count;

    /// <summary>How much was said in them so far.</summary>
    public int Said => _said;

    /// <summary>Opens them.</summary>
    /// <param name="places">Who sits at which reed.</param>
    /// <param name="chance">When each says something.</param>
    /// <param name="ct">Gives up.</param>
    public static async Task<OtherTabs> OpenAsync(IEnumerable<(CookieClient Teacher, ReedId Reed)> places, Random chance, CancellationToken ct)
    {
        var all = new OtherTabs();
        foreach (var (teacher, reed) in places)
        {
            all._tabs.Add(await OtherTab.OpenAsync(teacher, reed, ct));
        }

        all._work.AddRange(all._tabs.Select((tab, number) => all.WorkAsync(tab, number, new Random(chance.Next()))));
        return all;
    }

    /// <summary>Ends the work in them, with whatever went wrong in it, and closes them.</summary>
    public async ValueTask DisposeAsync()
    {
        var troubles = _tabs.SelectMany(tab => tab.Troubles).ToList();
        await _enough.CancelAsync();
        try
        {
            await Task.WhenAll(_work);
        }
        finally
        {
            foreach (var tab in _tabs)
            {
                await tab.DisposeAsync();
            }

            _enough.Dispose();
        }

        Assert.Empty(troubles);
    }

    private async Task WorkAsync(OtherTab tab, int number, Random chance)
    {
        var pause = chance.Next(Longest);
        for (var turn = number; ; turn++)
        {
            try
            {
                await Task.Delay(pause, _enough.Token);
            }
            catch (OperationCanceledException)
            {
                return;
            }

            await tab.SayAsync(Lines[turn % Lines.Length], CancellationToken.None);
            Interlocked.Increment(ref _said);
            pause = chance.Next(Shortest, Longest);
        }
    }
}
