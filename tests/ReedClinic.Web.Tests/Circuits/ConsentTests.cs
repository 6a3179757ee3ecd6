using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Circuits;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Bench;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Circuits;

/// <summary>A guardian takes consent back while a teacher has the reed on the bench. OWASP ASVS 5.0: 8.3.2.</summary>
public sealed class ConsentTests(CircuitHost host) : IClassFixture<CircuitHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_pressed_next_is_refused_and_the_page_is_left_by_itself_within_a_minute()
    {
        var (batch, guardian) = await YoungerAsync("Pia Kestrel");
        var scene = new BenchScene(host, batch);
        using var teacher = await host.AtTheBench("Runa");
        await using var typing = await teacher.BenchAsync(scene.Page);
        await using var waiting = await teacher.BenchAsync(scene.Page);
        await typing.TypeNoteAsync("too late");
        await WithdrawAsync(guardian, batch.Student);

        Assert.True((await typing.SaveAsync()).Succeeded);
        await typing.UntilAsync(c => c.Screen.Text.Contains("go home unworked", StringComparison.Ordinal) || c.Leads.Count > 0, Ct);
        Assert.Empty((await scene.Log()).History);
        Assert.Empty(waiting.Leads);

        host.Clock.Advance(TimeSpan.FromSeconds(30));
        await LeftAsync(waiting, scene.Page);
    }

    [Fact]
    public async Task Every_open_bench_is_told_at_once_and_others_stay()
    {
        var (batch, guardian) = await YoungerAsync("Milo Vale");
        var scene = new BenchScene(host, batch);
        var other = await BenchScene.Open(host, "Alma", "red thread");
        using var teacher = await host.AtTheBench("Sigrun");
        await using var theirs = await teacher.BenchAsync(scene.Page);
        await using var bystander = await teacher.BenchAsync(other.Page);
        using var rosa = await host.SignedIn(guardian, SignInWay.Password);
        var ward = $"/wards/{batch.Student.Value}";

        using var answer = await Form.Named(rosa, $"{ward}/take-back", (await rosa.See($"{ward}/take-back")).Page, "consent").Post();
        Assert.Equal($"{ward}?done=withdrawn", answer.Leads());

        await LeftAsync(theirs, scene.Page);
        await bystander.TypeNoteAsync("nothing was taken away here");
        Assert.True((await bystander.SaveAsync()).Succeeded);
        Assert.Empty(bystander.Leads);
    }

    private static async Task LeftAsync(Circuit circuit, string page)
    {
        await circuit.UntilAsync(c => c.Leads.Count > 0 && c.Entry() is null, Ct);
        Assert.Equal(page, circuit.Leads[0]);
    }

    private async Task WithdrawAsync(AccountId guardian, StudentId ward)
    {
        await using var scope = host.Services.CreateAsyncScope();
        BenchScene.Value(await scope.ServiceProvider.GetRequiredService<WardBook>()
            .WithdrawAsync(new Actor(guardian, null, false, false) { IsFresh = true }, ward, Parcel.NewOperation(), Ct));
    }

    // A younger student's batch, and the guardian who has agreed.
    private async Task<(Batch Batch, AccountId Guardian)> YoungerAsync(string name)
    {
        await using var scope = host.Services.CreateAsyncScope();
        var services = scope.ServiceProvider;
        var wanted = new NewAccount(name, ClinicHost.NewEmail(name.Split(' ')[0]), ClinicHost.Password) { Age = AgeAnswer.Younger };
        var account = BenchScene.Value(await services.GetRequiredService<AccountRegister>().AdmitAsync(wanted, Role.Student, Parcel.NewOperation(), Ct));
        var student = (await services.GetRequiredService<AccountBook>().ActorFor(account, Ct))!;
        var email = ClinicHost.NewEmail("rosa");
        Assert.IsType<Outcome<GuardianView>.Done>(await services.GetRequiredService<GuardianBook>().AskAsync(student, "Rosa", email, Parcel.NewOperation(), Ct));
        var secret = (await host.Mailed(email, "/guardian/answer/")).Split('/')[^1];
        var guardian = BenchScene.Value(await services.GetRequiredService<GuardianBook>().AgreeNewAsync(secret, "Rosa", ClinicHost.Password, Parcel.NewOperation(), Ct));
        return ((await host.Announce(name, "blue thread")).Batch, guardian);
    }
}
