using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Tests.People;

public sealed class AccountBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const string Password = "seven small reeds in a tin";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task Admitting_somebody_makes_an_account_and_the_person_behind_it(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        await using var scope = db.Services.CreateAsyncScope();
        var book = scope.ServiceProvider.GetRequiredService<AccountBook>();

        var account = Done(await scope.ServiceProvider.GetRequiredService<AccountRegister>().AdmitAsync(new NewAccount(" Inês ", "ines@harbour.example", Password) { Age = AgeAnswer.OldEnough }, Role.Student, NewOperation(), Ct));
        var actor = await book.ActorFor(account, Ct);

        Assert.NotNull(actor);
        Assert.False(actor.WorksHere);
        await using var context = db.CreateDbContext();
        var person = await context.Set<Student>().SingleAsync(row => row.Account == account, Ct);
        Assert.Equal(actor.Student, person.Id);
        Assert.Equal("Inês", person.Name);
        Assert.Equal("ines@harbour.example", person.FoldedEmail);
    }

    [Theory, OnBothEngines]
    public async Task An_account_that_was_made_can_sign_in_through_Identity(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        await using var scope = db.Services.CreateAsyncScope();
        var book = scope.ServiceProvider.GetRequiredService<AccountBook>();
        await scope.ServiceProvider.GetRequiredService<AccountRegister>().AdmitAsync(new NewAccount("Odd", "o'dd+\"ü\"@harbour.example", Password) { Age = AgeAnswer.OldEnough }, Role.Student, NewOperation(), Ct);

        var users = scope.ServiceProvider.GetRequiredService<UserManager<ClinicAccount>>();
        var found = await users.FindByEmailAsync("O'DD+\"Ü\"@Harbour.Example");
        Assert.NotNull(found);
        Assert.True(await users.CheckPasswordAsync(found, Password));
        Assert.True(await users.IsInRoleAsync(found, nameof(Role.Student)));
        Assert.True(await users.GetLockoutEnabledAsync(found));
        for (var wrong = 0; wrong < 5; wrong++)
        {
            Assert.True((await users.AccessFailedAsync(found)).Succeeded);
        }

        Assert.True(await users.IsLockedOutAsync(found));
    }

    [Theory, OnBothEngines]
    public async Task Twenty_submits_of_one_form_at_once_make_one_account(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var operation = NewOperation();
        var wanted = new NewAccount("Twenty", "twenty@harbour.example", Password) { Age = AgeAnswer.OldEnough };
        var answers = await Task.WhenAll(Enumerable.Range(0, 20).Select(async _ =>
        {
            await using var scope = db.Services.CreateAsyncScope();
            return Done(await scope.ServiceProvider.GetRequiredService<AccountRegister>().AdmitAsync(wanted, Role.Student, operation, Ct));
        }));

        Assert.Single(answers.Distinct());
        await using var context = db.CreateDbContext();
        Assert.Equal(1, await context.Set<Student>().CountAsync(row => row.FoldedEmail == "twenty@harbour.example", Ct));
    }

    [Theory, OnBothEngines]
    public async Task An_operation_id_without_its_password_opens_nothing(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        await using var scope = db.Services.CreateAsyncScope();
        var book = scope.ServiceProvider.GetRequiredService<AccountBook>();
        var operation = NewOperation();
        Done(await scope.ServiceProvider.GetRequiredService<AccountRegister>().AdmitAsync(new NewAccount("Bram", "bram@harbour.example", Password) { Age = AgeAnswer.OldEnough }, Role.Student, operation, Ct));

        var guess = await scope.ServiceProvider.GetRequiredService<AccountRegister>().AdmitAsync(new NewAccount("Eve", "bram@harbour.example", "another fifteen letters") { Age = AgeAnswer.OldEnough }, Role.Student, operation, Ct);
        var other = await scope.ServiceProvider.GetRequiredService<AccountRegister>().AdmitAsync(new NewAccount("Eve", "eve@harbour.example", Password) { Age = AgeAnswer.OldEnough }, Role.Student, operation, Ct);
        var taken = await scope.ServiceProvider.GetRequiredService<AccountRegister>().AdmitAsync(new NewAccount("Eve", "BRAM@harbour.example", Password) { Age = AgeAnswer.OldEnough }, Role.Student, NewOperation(), Ct);
        Assert.All([guess, other, taken], answer => Assert.IsType<Outcome<AccountId>.Refused>(answer));
    }

    [Theory, OnBothEngines]
    public async Task Every_wrong_field_is_named_and_nothing_is_written(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await using var scope = db.Services.CreateAsyncScope();
        var book = scope.ServiceProvider.GetRequiredService<AccountBook>();
        var answer = await scope.ServiceProvider.GetRequiredService<AccountRegister>().AdmitAsync(new NewAccount("a\u0007b", "nowhere", "short") { Age = AgeAnswer.OldEnough }, Role.Student, NewOperation(), Ct);
        var refused = Assert.IsType<Outcome<AccountId>.Refused>(answer);
        Assert.Equal(["Name", "Email", "Password"], refused.Problems.Select(problem => problem.Field));
        await using var context = db.CreateDbContext();
        Assert.False(await context.Users.AnyAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_right_that_was_taken_away_is_gone_at_the_next_operation(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await using var scope = db.Services.CreateAsyncScope();
        var book = scope.ServiceProvider.GetRequiredService<AccountBook>();
        var owner = await OpenStudioAsync(scope.ServiceProvider, "owner@harbour.example");
        await using (var context = db.CreateDbContext())
        {
            await context.UserRoles.Where(held => held.UserId == owner.Value).ExecuteDeleteAsync(Ct);
        }

        Assert.False((await book.ActorFor(owner, Ct))!.WorksHere);
        Assert.Null(await book.ActorFor(new AccountId(NewOperation().Value), Ct));
    }

    [Theory, OnBothEngines]
    public async Task The_first_run_code_opens_the_studio_once(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await using var scope = db.Services.CreateAsyncScope();
        var studio = scope.ServiceProvider.GetRequiredService<StudioBook>();
        Assert.Null(await studio.Read(Ct));
        var owner = new NewAccount("Mara", "mara@harbour.example", Password) { Age = AgeAnswer.OldEnough };

        var guess = await studio.Open("0000-0000-0000-0000-0000-0000-0000-0000", "Quay Reeds", null, owner, NewOperation(), Ct);
        Assert.Equal("Code", Assert.Single(Assert.IsType<Outcome<AccountId>.Refused>(guess).Problems).Field);

        var code = db.Services.GetRequiredService<FirstRunCode>().Text.ToUpperInvariant().Replace("-", " ", StringComparison.Ordinal);
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(async one =>
        {
            await using var own = db.Services.CreateAsyncScope();
            var typed = owner with { Email = $"owner{one}@harbour.example" };
            return await own.ServiceProvider.GetRequiredService<StudioBook>().Open(code, "Quay Reeds", "7 Quay Street\nMarrow Bay", typed, NewOperation(), Ct);
        }));
        Assert.Single(answers.OfType<Outcome<AccountId>.Done>());
        Assert.Equal(7, answers.OfType<Outcome<AccountId>.NotFound>().Count());
        await using var context = db.CreateDbContext();
        Assert.Equal(1, await context.Users.CountAsync(Ct));
        Assert.Equal(("Quay Reeds", "7 Quay Street\nMarrow Bay"), ((await studio.Read(Ct))?.Name, (await studio.Read(Ct))?.PostTo));
    }

    [Theory, OnBothEngines]
    public async Task An_owner_says_where_parcels_go_and_nobody_else_does(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await using var scope = db.Services.CreateAsyncScope();
        var studio = scope.ServiceProvider.GetRequiredService<StudioBook>();
        var owner = new Actor(await OpenStudioAsync(scope.ServiceProvider, "mara@harbour.example"), null, IsTeacher: true, IsOwner: true);
        var opened = (await studio.Read(Ct))!;
        var operation = NewOperation();

        var said = await studio.DescribeAsync(owner, "Quay Reeds", " 7 Quay Street\nMarrow Bay ", " desk@harbour.example ", opened.Version, operation, Ct);
        var again = await studio.DescribeAsync(owner, "Quay Reeds", " 7 Quay Street\nMarrow Bay ", " desk@harbour.example ", opened.Version, operation, Ct);
        var late = await studio.DescribeAsync(owner, "Elsewhere", null, null, opened.Version, NewOperation(), Ct);
        var nobody = await studio.DescribeAsync(owner with { IsOwner = false }, "Elsewhere", null, null, opened.Version, NewOperation(), Ct);
        var tooLong = await studio.DescribeAsync(owner, "", new string('a', 401), "desk at the harbour", opened.Version, NewOperation(), Ct);

        Assert.Equal("7 Quay Street\nMarrow Bay", Assert.IsType<Outcome<StudioView>.Done>(said).Value.PostTo);
        Assert.IsType<Outcome<StudioView>.Done>(again);
        Assert.Equal("Quay Reeds", Assert.IsType<Outcome<StudioView>.Conflict>(late).Theirs.Name);
        Assert.IsType<Outcome<StudioView>.NotFound>(nobody);
        Assert.Equal("desk@harbour.example", (await studio.Read(Ct))!.WriteTo);
        Assert.Equal(["StudioName", "PostTo", "WriteTo"], Assert.IsType<Outcome<StudioView>.Refused>(tooLong).Problems.Select(problem => problem.Field));
    }

    [Fact]
    public async Task Passwords_are_hashed_with_at_least_210_000_rounds()
    {
        // OWASP ASVS 5.0, appendix C: PBKDF2 with HMAC-SHA-512 from 210,000 iterations.
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddClinicData((await databases.OpenAsync(ClinicEngine.Sqlite)).Configuration, contentRoot: Path.GetTempPath());
        await using var real = services.BuildServiceProvider();
        Assert.True(real.GetRequiredService<IOptions<PasswordHasherOptions>>().Value.IterationCount >= 210_000);
        await using var scope = real.CreateAsyncScope();
        var hash = Convert.FromBase64String(
            scope.ServiceProvider.GetRequiredService<IPasswordHasher<ClinicAccount>>().HashPassword(new ClinicAccount(), Password));
        Assert.Equal(210_000u, System.Buffers.Binary.BinaryPrimitives.ReadUInt32BigEndian(hash.AsSpan(5)));
    }

    [Fact]
    public void A_first_run_code_has_128_random_bits_and_never_repeats()
    {
        var code = new FirstRunCode();
        Assert.Equal(32, code.Text.Count(char.IsAsciiHexDigit));
        Assert.NotEqual(code.Text, new FirstRunCode().Text);
        Assert.True(code.Is(code.Text));
        Assert.False(code.Is(null));
        Assert.False(code.Is(code.Text + "0"));
        Assert.DoesNotContain(code.Text, $"{code}", StringComparison.Ordinal);
    }

    private static async Task<AccountId> OpenStudioAsync(IServiceProvider services, string email) => Done(
        await services.GetRequiredService<StudioBook>().Open(
            services.GetRequiredService<FirstRunCode>().Text, "Quay Reeds", null, new NewAccount("Mara", email, Password) { Age = AgeAnswer.OldEnough }, NewOperation(), Ct));

    private static OperationId NewOperation() => new(Guid.CreateVersion7(TimeProvider.System.GetUtcNow()));

    private static AccountId Done(Outcome<AccountId> outcome) => Assert.IsType<Outcome<AccountId>.Done>(outcome).Value;
}
