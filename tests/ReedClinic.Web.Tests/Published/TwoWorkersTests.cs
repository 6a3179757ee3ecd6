using System.Globalization;
using ReedClinic.Web.Tests.Mailing;

namespace ReedClinic.Web.Tests.Published;

/// <summary>Two processes of one studio share its work: each mail is claimed by one of them.</summary>
public sealed class TwoWorkersTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly int Many = int.TryParse(Environment.GetEnvironmentVariable("REEDCLINIC_TWO_MAILS"), CultureInfo.InvariantCulture, out var asked) ? asked : 60;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Each_mail_goes_out_once_whichever_process_takes_it()
    {
        var db = await databases.FreshAsync(ClinicEngine.Postgres);
        await using MailSink one = new(), other = new();
        using var both = new Barrier(2);
        foreach (var sink in new[] { one, other })
        {
            // The first mail of each waits for the other's first: so both are at work at once.
            var first = 1;
            sink.Does = (_, _) =>
            {
                if (Interlocked.Exchange(ref first, 0) == 1)
                {
                    both.SignalAndWait(Ct);
                }

                return Fate.Taken;
            };
            sink.Open();
        }

        var post = new LetterPost(db);
        await post.SendAsync(Many);
        await using var here = await post.StartAsync(one);
        await using var there = await post.StartAsync(other);
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(100));
        while ((await post.MailsAsync()).Exists(mail => mail.DoneAt is null && mail.GaveUpAt is null))
        {
            await tick.WaitForNextTickAsync(Ct);
        }

        var (put, taken) = ((await post.MailsAsync()).Count, one.Taken.Concat(other.Taken).ToList());
        var distinct = taken.Select(mail => mail.MessageId).Distinct().Count();
        await TellAsync($"mails put out: {put}; sent by one process: {one.Taken.Count}, by the other: {other.Taken.Count}; distinct: {distinct}");
        Assert.True(put >= Many);
        Assert.Equal((put, put), (taken.Count, distinct));
        Assert.NotEmpty(one.Taken);
        Assert.NotEmpty(other.Taken);
    }

    private static async Task TellAsync(string line)
    {
        TestContext.Current.SendDiagnosticMessage(line);
        if (Environment.GetEnvironmentVariable("REEDCLINIC_TWO_LOG") is { Length: > 0 } log)
        {
            await File.AppendAllTextAsync(log, line + '\n', Ct);
        }
    }
}
