using Bunit;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Arrival;
using ReedClinic.Web.Mailing;

namespace ReedClinic.Web.Tests.Arrival;

/// <summary>What is said of the mail about mould is what becomes of it.</summary>
public sealed class ArrivalSummaryTests : BunitContext
{
    private static readonly DateTimeOffset Now = new(2026, 5, 20, 8, 30, 0, TimeSpan.Zero);

    [Theory]
    [InlineData("server", true)]
    [InlineData("folder", false)]
    [InlineData("nowhere", false)]
    public void A_mail_about_mould_is_promised_only_where_somebody_gets_it(string today, bool told)
    {
        Services.AddLocalization();
        Services.AddSingleton(new MailPost(new MailSettings { Folder = today == "folder" ? "/mail" : null, Host = today == "server" ? "mail.example.org" : null }, null!));
        var batch = Batch.Announce(
            new BatchId(Guid.CreateVersion7(Now)), BatchCode.FromNumber(7), new StudentId(Guid.CreateVersion7(Now)), new OperationId(Guid.CreateVersion7(Now)),
            new AnnouncedBatch(null, null, null, [new AnnouncedReed("blue thread", "It is flat.", Permission.AdviseOnly)], []), () => Guid.CreateVersion7(Now), Now.AddDays(-6));
        Assert.Empty(batch.RecordArrival(batch.Reeds[0].Id, new ReedArrival(Presence.Here, Fitness: Fitness.Mould), Now));

        var said = Render<ArrivalSummary>(p => p.Add(one => one.Batch, batch)).Find("section").TextContent;

        Assert.Equal(told, said.Contains("is written to about mould and damp", StringComparison.Ordinal));
        Assert.Equal(told, said.Contains("If you take mould back, that is told too", StringComparison.Ordinal));
        Assert.Equal(!told, said.Contains("No mail goes out from here just now", StringComparison.Ordinal));
    }
}
