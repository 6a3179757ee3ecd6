using System.Net;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Localization;
using ReedClinic.Data.Backups;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Upkeep;
using ReedClinic.Web.Features.Upkeep;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Upkeep;

public sealed class UpkeepPageTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_owner_reads_that_there_is_no_back_up_and_what_to_do_until_there_is_one()
    {
        using var owner = await Open();
        Assert.Contains("href=\"/studio/upkeep\"", (await owner.See("/studio")).Page, StringComparison.Ordinal);

        var before = WebUtility.HtmlDecode((await owner.See("/studio/upkeep")).Page);
        await host.Services.GetRequiredService<BackupMaker>().MakeAsync(null, withMedia: true, _ => { }, Ct);
        var after = WebUtility.HtmlDecode((await owner.See("/studio/upkeep")).Page);

        Assert.Contains("No whole back-up is found where the program looks for them.", before, StringComparison.Ordinal);
        Assert.Contains("Something wants to be done today.", before, StringComparison.Ordinal);
        Assert.Contains("runs the command “backup”", before, StringComparison.Ordinal);
        Assert.Contains("Mail is written to a folder of this machine; nobody gets it.", after, StringComparison.Ordinal);
        Assert.Contains("Have a mail server named in the settings", after, StringComparison.Ordinal);
        Assert.DoesNotContain("Mail goes out.", before + after, StringComparison.Ordinal);
        Assert.Contains("The last back-up was made", after, StringComparison.Ordinal);
        Assert.Matches("[0-9.]+\u00a0[TGM]B of [0-9.]+\u00a0[TGM]B are free where the records lie", after);
        Assert.DoesNotContain("runs the command “backup”", after, StringComparison.Ordinal);
        Assert.DoesNotContain(host.Services.GetRequiredService<BackupSettings>().Folder, before + after, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.5, "less than a minute")]
    [InlineData(1, "one minute")]
    [InlineData(119, "119 minutes")]
    [InlineData(120, "2 hours")]
    [InlineData(60 * 47, "47 hours")]
    [InlineData(60 * 48, "2 days")]
    public void An_age_is_said_as_people_do(double minutes, string said) =>
        Assert.Equal(said, UpkeepWords.Age(host.Services.GetRequiredService<IStringLocalizer<UpkeepText>>(), TimeSpan.FromMinutes(minutes)));

    [Theory]
    [InlineData(999, "999 B")]
    [InlineData(1_000, "1.0 kB")]
    [InlineData(40_000_000_000, "40 GB")]
    [InlineData(1_500_000_000_000, "1.5 TB")]
    public void Room_is_said_in_steps_of_a_thousand(long bytes, string said) => Assert.Equal(said.Replace(' ', '\u00a0'), UpkeepWords.Room(bytes));

    [Fact]
    public void Every_matter_has_words_for_every_way_it_can_stand()
    {
        var words = host.Services.GetRequiredService<IStringLocalizer<UpkeepText>>();
        var now = DateTimeOffset.UnixEpoch;
        var well = new UpkeepFacts(now, now, 1, 2, 0, null, 0, true, 0, 0, 1, 2, 3);
        foreach (var facts in new[] { well, well with { LastBackup = null, DiskFree = null, WorkDue = 3, OldestDue = now, WorkGivenUp = 1, MailIsOn = false, MailsFailing = 1, MailsGivenUp = 2, Stumbling = [new(QuietWork.Mail, now, 1)] }, well with { RecordsAreElsewhere = true }, well with { MailGoesToFolder = true }, well with { RecordsFree = 4, RecordsSize = 5 } })
        {
            Assert.All(Enum.GetValues<UpkeepMatter>(), matter =>
            {
                Assert.EndsWith(".", UpkeepWords.Standing(words, facts, matter), StringComparison.Ordinal);
                Assert.EndsWith(".", UpkeepWords.ToDo(words, facts, matter), StringComparison.Ordinal);
            });
        }

        Assert.Equal(
            "Sending mail has failed 3 times in a row, for 5 minutes. Reading sounds failed once, one minute ago.",
            UpkeepWords.Standing(words, well with { Now = now.AddMinutes(5), Stumbling = [new(QuietWork.Mail, now, 3), new(QuietWork.Sound, now.AddMinutes(4), 1)] }, UpkeepMatter.Workers));
        Assert.Equal("3 pieces of work waiting, the oldest for less than a minute. One piece given up after many tries.", UpkeepWords.Standing(words, well with { WorkDue = 3, OldestDue = now, WorkGivenUp = 1 }, UpkeepMatter.Work));
    }

    private async Task<HttpClient> Open()
    {
        using var visitor = host.Visitor();
        using var opened = await (await Form.At(visitor, "/first-run"))
            .Set("Form.Code", host.Services.GetRequiredService<FirstRunCode>().Text)
            .Set("Form.StudioName", "Quay Reeds").Set("Form.Name", "Mara").Set("Form.Email", "mara@harbour.example").Set("Form.Password", ClinicHost.Password).Post();
        Assert.Equal(HttpStatusCode.Found, opened.StatusCode);
        await using var scope = host.Services.CreateAsyncScope();
        var owner = await scope.ServiceProvider.GetRequiredService<UserManager<ClinicAccount>>().FindByEmailAsync("mara@harbour.example");
        return await host.SignedIn(new AccountId(owner!.Id));
    }
}
