using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.People;
using ReedClinic.Web.Background;
using ReedClinic.Web.Mailing;

namespace ReedClinic.Web.Tests.Mailing;

/// <summary>
/// Mail on its way, with a server that behaves and one that doesn't. <c>tests/faults.sh</c> sends a thousand; here are fifty.
/// </summary>
public sealed class MailDeliveryTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly int Many =
        int.TryParse(Environment.GetEnvironmentVariable("REEDCLINIC_MAILS"), CultureInfo.InvariantCulture, out var asked) ? asked : 50;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task Two_workers_on_one_database_send_each_mail_once_and_over_tls(ClinicEngine engine)
    {
        await using var sink = new MailSink();
        sink.Open();
        await using var rig = new MailRig(await databases.FreshAsync(engine), MailRig.To(sink));
        await rig.PutAsync(Many);

        var tried = await Task.WhenAll(rig.Worker().SendDueAsync(Ct), rig.Worker().SendDueAsync(Ct));

        Assert.Equal(Many, tried.Sum());
        Assert.Equal(Many, sink.Taken.Count);
        Assert.Equal(Many, sink.Private);
        Assert.Equal(Many, sink.Taken.Select(mail => mail.MessageId).Distinct().Count());
        Assert.Equal(Many, sink.Taken.Select(mail => mail.To.ToString()).Distinct().Count());
        Assert.All(await rig.JobsAsync(), job => Assert.True(job is { DoneAt: not null, Payload: "", Way: MailWay.Posted }));
        if (Environment.GetEnvironmentVariable("REEDCLINIC_FAULT_LOG") is { } report)
        {
            await File.AppendAllTextAsync(report, $"mails on {engine}: {Many} put out, {sink.Taken.Count} taken, {sink.Taken.Select(mail => mail.MessageId).Distinct().Count()} distinct\n", Ct);
        }
    }

    [Theory, OnBothEngines]
    public async Task A_mail_that_was_written_to_a_folder_stays_one_whatever_the_settings_become(ClinicEngine engine)
    {
        var folder = Directory.CreateTempSubdirectory("mails");
        var db = await databases.FreshAsync(engine);
        await using (var rig = new MailRig(db, new MailSettings { Folder = folder.FullName, From = "reeds@harbour.example", Address = new Uri("https://reeds.harbour.example") }))
        {
            await rig.PutAsync(2);
            Assert.Equal(2, await rig.Worker().SendDueAsync(Ct));
        }

        await using var sink = new MailSink();
        sink.Open();
        await using var later = new MailRig(db, MailRig.To(sink));
        await later.PutAsync(1);
        Assert.Equal(1, await later.Worker().SendDueAsync(Ct));

        Assert.Equal([MailWay.Posted, MailWay.Folder, MailWay.Folder], (await later.JobsAsync()).Where(job => job.Kind == JobKind.Mail).Select(job => job.Way!.Value).Order());
        Assert.Equal(2, folder.GetFiles("*.eml").Length);
        folder.Delete(recursive: true);
    }

    [Theory, OnBothEngines]
    public async Task A_change_that_was_never_saved_sends_nothing(ClinicEngine engine)
    {
        await using var sink = new MailSink();
        sink.Open();
        await using var rig = new MailRig(await databases.FreshAsync(engine), MailRig.To(sink));
        await rig.PutAsync(3, save: false);

        Assert.Equal(0, await rig.Worker().SendDueAsync(Ct));
        Assert.Empty(sink.Came);
    }

    [Fact]
    public async Task A_server_that_asks_to_wait_gets_the_mail_later_and_one_that_refuses_it_for_ever_does_not()
    {
        await using var sink = new MailSink();
        sink.Does = (mail, attempt) => mail.To.ToString().Contains("student1@", StringComparison.Ordinal) ? Fate.Never : attempt == 1 ? Fate.NotNow : Fate.Taken;
        sink.Open();
        await using var rig = new MailRig(await databases.FreshAsync(ClinicEngine.Sqlite), MailRig.To(sink));
        await rig.PutAsync(5);
        var worker = rig.Worker();

        await worker.SendDueAsync(Ct);
        Assert.Empty(sink.Taken);
        var owner = new Actor(new AccountId((await rig.JobsAsync())[0].Id), null, IsTeacher: false, IsOwner: true);
        var stands = (await rig.Mails.LookAsync(owner, Ct))!;
        Assert.Equal((4, 4), (stands.Waiting, stands.Failing.Count));
        Assert.All(stands.Failing, mail => Assert.Equal(("The mail server asked to try later (451).", rig.Clock.GetUtcNow() + JobBoard.Backoff(1)), (mail.Problem, mail.NextAt)));
        Assert.Equal(0, await worker.SendDueAsync(Ct)); // not before its time
        rig.Clock.Advance(JobBoard.Backoff(1));
        Assert.Equal(4, await worker.SendDueAsync(Ct));

        Assert.Equal(4, sink.Taken.Count);
        var refused = Assert.Single(await rig.JobsAsync(), job => job.GaveUpAt is not null);
        Assert.Equal(1, refused.Attempts);
        Assert.Contains("refused", refused.Problem, StringComparison.Ordinal);
        Assert.Equal(refused.Problem, Assert.Single((await rig.Mails.LookAsync(owner, Ct))!.Stuck).Problem);
        Assert.Null(await rig.Mails.LookAsync(owner with { IsOwner = false, IsTeacher = true }, Ct));
    }

    [Fact]
    public async Task A_server_that_hangs_up_before_it_says_yes_gets_the_same_mail_at_most_once_more_under_the_same_id()
    {
        await using var sink = new MailSink();
        sink.Does = (_, attempt) => attempt == 1 ? Fate.TakenButNotSaid : Fate.Taken;
        sink.Open();
        await using var rig = new MailRig(await databases.FreshAsync(ClinicEngine.Sqlite), MailRig.To(sink));
        await rig.PutAsync(5);
        var worker = rig.Worker();

        await worker.SendDueAsync(Ct);
        rig.Clock.Advance(JobBoard.Backoff(1));
        await worker.SendDueAsync(Ct);
        rig.Clock.Advance(TimeSpan.FromHours(12));
        Assert.Equal(0, await worker.SendDueAsync(Ct));

        Assert.All(sink.Taken.GroupBy(mail => mail.MessageId), same => Assert.Equal(2, same.Count()));
        Assert.Equal(5, sink.Taken.Select(mail => mail.MessageId).Distinct().Count());
    }

    [Fact]
    public async Task A_server_that_falls_silent_is_waited_for_only_so_long()
    {
        await using var sink = new MailSink();
        sink.Does = (_, attempt) => attempt == 1 ? Fate.Stalled : Fate.Taken;
        sink.Open();
        await using var rig = new MailRig(await databases.FreshAsync(ClinicEngine.Sqlite), MailRig.To(sink));
        await rig.PutAsync(1);
        var worker = rig.Worker(patience: rig.Clock);

        var sending = worker.SendDueAsync(Ct);
        await WaitForAsync(() => !sink.Came.IsEmpty);
        Assert.False(sending.IsCompleted);
        rig.Clock.Advance(MailSender.Patience);
        Assert.Equal(1, await sending.WaitAsync(TimeSpan.FromSeconds(60), Ct));
        Assert.Contains("too long", Assert.Single(await rig.JobsAsync()).Problem, StringComparison.Ordinal);

        sink.LetGo();
        rig.Clock.Advance(JobBoard.Backoff(1));
        await worker.SendDueAsync(Ct);
        Assert.Single(sink.Taken);
    }

    [Fact]
    public async Task Each_try_with_a_link_of_its_own_is_a_message_of_its_own_so_that_nobody_keeps_the_first_of_two()
    {
        await using var rig = new MailRig(await databases.FreshAsync(ClinicEngine.Sqlite), new MailSettings { Host = "mail.harbour.example", Address = new Uri("https://reeds.harbour.example/") });
        var news = new Mail(MailKind.News, "ines@harbour.example") { Path = "/letters/7KP-W3MQ" };
        string IdOf(int attempt, string? secret)
        {
            using var message = rig.Writer().Write(new Job { Id = Guid.Empty, Attempts = attempt }, news with { Secret = secret, At = rig.Clock.GetUtcNow() }, "Quay Reeds")!;
            return message.MessageId!;
        }

        Assert.Equal(IdOf(1, null), IdOf(2, null));
        Assert.NotEqual(IdOf(1, "one"), IdOf(2, "two"));
    }

    [Fact]
    public async Task Nobody_at_the_door_is_waited_for_and_given_up_only_after_the_last_try()
    {
        await using var sink = new MailSink(); // never opened
        await using var rig = new MailRig(await databases.FreshAsync(ClinicEngine.Sqlite), MailRig.To(sink));
        await rig.PutAsync(1);
        var worker = rig.Worker();
        for (var attempt = 1; attempt < JobBoard.MostAttempts; attempt++)
        {
            Assert.Equal(1, await worker.SendDueAsync(Ct));
            Assert.Null(Assert.Single(await rig.JobsAsync()).GaveUpAt);
            rig.Clock.Advance(JobBoard.Backoff(attempt));
        }

        Assert.Equal(1, await worker.SendDueAsync(Ct));
        var job = Assert.Single(await rig.JobsAsync());
        Assert.NotNull(job.GaveUpAt);
        Assert.Contains("connection", job.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_certificate_that_nobody_vouches_for_gets_no_mail()
    {
        await using var sink = new MailSink();
        sink.Open();
        await using var rig = new MailRig(await databases.FreshAsync(ClinicEngine.Sqlite), MailRig.To(sink, trusted: false));
        await rig.PutAsync(1);

        await rig.Worker().SendDueAsync(Ct);

        Assert.Empty(sink.Came);
        Assert.Contains("certificate", Assert.Single(await rig.JobsAsync()).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_certificate_with_another_name_gets_no_mail_even_when_it_is_vouched_for()
    {
        await using var sink = new MailSink();
        sink.Open();
        await using var rig = new MailRig(await databases.FreshAsync(ClinicEngine.Sqlite), MailRig.To(sink) with { Host = "127.0.0.1" });
        await rig.PutAsync(1);

        await rig.Worker().SendDueAsync(Ct);

        Assert.Empty(sink.Came);
    }

    [Fact]
    public async Task A_server_that_is_private_from_the_first_byte_gets_mail_too()
    {
        await using var sink = new MailSink();
        sink.Open(fromTheFirstByte: true);
        await using var rig = new MailRig(await databases.FreshAsync(ClinicEngine.Sqlite), MailRig.To(sink) with { Tls = MailTls.SslOnConnect });
        await rig.PutAsync(2);

        await rig.Worker().SendDueAsync(Ct);

        Assert.Equal((2, 2), (sink.Taken.Count, sink.Private));
    }

    [Theory, OnBothEngines]
    public async Task When_a_worker_dies_its_mail_is_taken_by_another_once_the_lease_has_run_out(ClinicEngine engine)
    {
        await using var sink = new MailSink();
        sink.Open();
        await using var rig = new MailRig(await databases.FreshAsync(engine), MailRig.To(sink));
        await rig.PutAsync(1);
        var dead = await rig.Board.ClaimAsync(JobKind.Mail, Ct);

        Assert.NotNull(dead);
        Assert.Equal(0, await rig.Worker().SendDueAsync(Ct));
        rig.Clock.Advance(JobBoard.LeaseLength);
        Assert.Equal(1, await rig.Worker().SendDueAsync(Ct));
        Assert.False(await rig.Board.DoneAsync(dead, Ct)); // and the dead one has no say any more
        Assert.Single(sink.Taken);
    }

    [Fact]
    public async Task A_database_that_fails_stops_neither_the_worker_nor_the_site()
    {
        var db = await databases.FreshAsync(ClinicEngine.Sqlite);
        await using var sink = new MailSink();
        sink.Open();
        await using var rig = new MailRig(db, MailRig.To(sink));
        await rig.PutAsync(1);
        var failing = new FailingAtFirst(db, times: 3);
        using var worker = rig.Worker(db.Services.GetRequiredService<JobBell>(), failing);

        await worker.StartAsync(Ct);
        await WaitForAsync(() =>
        {
            rig.Clock.Advance(StudioWorker.LongestPause); // it waits a little longer each time
            return failing.Recovered.IsCompleted;
        });
        await WaitForAsync(() => !sink.Taken.IsEmpty);
        Assert.Null(worker.ExecuteTask!.Exception);
        Assert.False(worker.ExecuteTask.IsCompleted);
        await worker.StopAsync(Ct);
        Assert.True(worker.ExecuteTask.IsCompletedSuccessfully);
    }

    private static async Task WaitForAsync(Func<bool> there)
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(20));
        while (!there())
        {
            await tick.WaitForNextTickAsync(Ct);
        }
    }

    private sealed class FailingAtFirst(TestDatabase db, int times) : IDbContextFactory<ClinicDb>
    {
        private readonly TaskCompletionSource _recovered = new();
        private int _asked;

        public Task Recovered => _recovered.Task;

        public ClinicDb CreateDbContext()
        {
            // Each failure rings, so that the worker needn't wait for its floor.
            if (Interlocked.Increment(ref _asked) <= times)
            {
                Ring();
                throw new InvalidOperationException("The database is away.");
            }

            _recovered.TrySetResult();
            return db.CreateDbContext();
        }

        private void Ring() => Task.Run(async () =>
        {
            await using var context = db.CreateDbContext();
            context.Add(new Job { Id = Guid.CreateVersion7(TimeProvider.System.GetUtcNow()), Kind = JobKind.Retention });
            await context.SaveChangesAsync();
        });
    }
}
