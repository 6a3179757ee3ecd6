using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using ReedClinic.Data.Jobs;
using ReedClinic.KillDriver;
using ReedClinic.Web.Tests.Mailing;

namespace ReedClinic.Web.Tests.Published;

/// <summary>
/// Letters are sent while the mail server isn't there, puts off, refuses, hangs up behind the last byte or falls silent, and
/// while the published program is killed with a mail in its hand. <c>tests/faults.sh</c> does the same with a thousand letters.
/// </summary>
public sealed class HostilePostTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task Every_letter_is_told_of_through_a_hostile_mail_server_and_a_killed_program(ClinicEngine engine)
    {
        var (letters, kills) = (Number("REEDCLINIC_LETTERS") ?? 60, Number("REEDCLINIC_LETTER_KILLS") ?? 3);
        var seed = Number("REEDCLINIC_KILL_SEED") ?? RandomNumberGenerator.GetInt32(int.MaxValue);
        var db = await databases.FreshAsync(engine);
        await using var sink = new MailSink();
        var (plan, post, chance) = (new HostilePlan(seed), new LetterPost(db), new Random(seed));
        sink.Does = plan.Of;
        var share = letters / (kills + 1);

        await post.SendAsync(letters - (share * kills));
        await using (var app = await post.StartAsync(sink)) // nobody is at the door yet
        {
            await UntilAsync(post, mails => mails.TrueForAll(mail => mail.Attempts > 0));
            Assert.Empty(sink.Came);
            await AnswersAsync(app);
        }

        sink.Open();
        for (var kill = 0; kill < kills; kill++)
        {
            await post.LeasesRunOutAsync();
            await post.WindAsync();
            var silent = plan.SilentAfter(chance.Next(Math.Min(share, 6)));
            await using var app = await post.StartAsync(sink);
            await post.SendAsync(share);
            await silent.WaitAsync(TimeSpan.FromSeconds(90), Ct);
            await AnswersAsync(app);
            await app.KillAsync();
            sink.LetGo();
        }

        var again = await SettleAsync(sink, post);
        await ProveAsync(post, sink, plan, $"letters on {engine}: seed={seed} sent={post.Sent.Count} taken-back={post.TakenBack.Count} kills={kills} given-up-and-sent-again={again}");
    }

    // Time passes until nothing waits any more, and a teacher sends again what was given up.
    private static async Task<int> SettleAsync(MailSink sink, LetterPost post)
    {
        await post.LeasesRunOutAsync();
        await using var app = await post.StartAsync(sink);
        for (var again = 0; ;)
        {
            await UntilAsync(post, mails => mails.TrueForAll(mail => mail.DoneAt is not null || mail.GaveUpAt is not null), post.WindAsync);
            if (await post.SendAgainAsync() is var more and > 0)
            {
                again += more;
                continue;
            }

            await AnswersAsync(app);
            return again;
        }
    }

    private static async Task ProveAsync(LetterPost post, MailSink sink, HostilePlan plan, string what)
    {
        var mails = await post.MailsAsync();
        var told = sink.Taken.Select(mail => mail.Subject!).ToList();
        var repeated = sink.Taken.GroupBy(mail => mail.MessageId!).Where(same => same.Count() > 1).ToList();
        var said = $"{what} mails={mails.Count} came={sink.Came.Count} taken={sink.Taken.Count} repeated={repeated.Count} "
            + string.Join(' ', plan.Done.OrderBy(pair => pair.Key).Select(pair => $"{pair.Key}={pair.Value}"));
        TestContext.Current.SendDiagnosticMessage(said);
        if (Environment.GetEnvironmentVariable("REEDCLINIC_FAULT_LOG") is { Length: > 0 } log)
        {
            await File.AppendAllTextAsync(log, said + "\n", Ct);
        }

        Assert.All(post.Sent, code => Assert.Contains(told, subject => subject.Contains(code, StringComparison.Ordinal)));
        Assert.All(post.TakenBack, code => Assert.DoesNotContain(sink.Came, mail => mail.Subject!.Contains(code, StringComparison.Ordinal)));
        Assert.NotEmpty(post.TakenBack);
        Assert.Equal(mails.Count, sink.Came.Select(mail => mail.MessageId).Distinct().Count());
        Assert.All(repeated, same => Assert.True(same.Count() <= 1 + plan.Unsaid.GetValueOrDefault(same.Key), said));
        Assert.Equal(sink.Came.Count, sink.Private);
        foreach (var fate in new[] { Fate.Taken, Fate.NotNow, Fate.Never, Fate.TakenButNotSaid })
        {
            Assert.True(plan.Done.ContainsKey(fate), said); // or the server wasn't hostile
        }
    }

    private static async Task AnswersAsync(RunningApp app)
    {
        using var visitor = new HttpClient { BaseAddress = app.Address };
        visitor.DefaultRequestHeaders.Add("X-Forwarded-Proto", "https");
        await app.UntilReadyAsync(Ct);
        foreach (var path in new[] { "/health/ready", "/account/sign-in" })
        {
            using var answer = await visitor.GetAsync(new Uri(path, UriKind.Relative), Ct);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }
    }

    private static async Task UntilAsync(LetterPost post, Predicate<List<Job>> there, Func<Task>? each = null)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(Ct);
        patience.CancelAfter(TimeSpan.FromMinutes(10));
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(100));
        while (!there(await post.MailsAsync()))
        {
            await (each?.Invoke() ?? Task.CompletedTask);
            await tick.WaitForNextTickAsync(patience.Token);
        }
    }

    private static int? Number(string variable) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out var number) ? number : null;
}
