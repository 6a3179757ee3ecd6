# PostgreSQL as Debian packages it, started the way the official image is. Built by make-images.sh.
ARG BASE
FROM ${BASE}
RUN mkdir -p /etc/postgresql-common && echo 'create_main_cluster = false' > /etc/postgresql-common/createcluster.conf \
 && apt-get -qq update \
 && DEBIAN_FRONTEND=noninteractive apt-get -qq install --yes --no-install-recommends postgresql \
 && rm -rf /var/lib/apt/lists/* \
 && ln -s /usr/lib/postgresql/*/bin /usr/local/lib/postgresql
ENV PATH=/usr/local/lib/postgresql:$PATH PGDATA=/var/lib/postgresql/data
COPY postgres-start.sh /usr/local/bin/
VOLUME /var/lib/postgresql/data
STOPSIGNAL SIGINT
EXPOSE 5432
ENTRYPOINT ["bash", "/usr/local/bin/postgres-start.sh"]
CMD ["postgres"]
